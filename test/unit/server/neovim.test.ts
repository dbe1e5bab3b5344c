import { execFile, spawnSync } from 'node:child_process';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { describe, expect, it } from 'vitest';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';
import { waveBytes } from './host/waveBytes';

useServerPlaces();

const isInstalled = spawnSync('nvim', ['--version']).status === 0;
const script = fileURLToPath(new URL('host/neovim.lua', import.meta.url));

interface Found {
  code: string;
  line: number;
}

/** What the editor got, and what it made of it. */
interface Result {
  problem?: string;
  findings: Found[];
  completion: string[];
  hover: { kind: string; value: string };
  renamed: string;
  formatted: string;
  actions: string[];
  fixed: string;
  left: Found[];
}

const text = `#define $KEY 60
<group> volume=-3
<region> sample=a.wav key=$KEY
<region>  lok
<region>   sample=b.wav   lokye=61 hikey=62
`;

// Neovim as Debian packs it has a client of the protocol built in; nothing is installed into it and nothing set.
describe.skipIf(!isInstalled)('a plain client of the protocol, Neovim', () => {
  it('gets findings, completion, hover, rename, formatting and code actions', async () => {
    await mkdir(`${folder}/piano`);
    await writeFile(`${folder}/piano/a.wav`, waveBytes(100));
    await writeFile(`${folder}/piano/piano.sfz`, text);
    const places = {
      ZW_SERVER: JSON.stringify([process.execPath, bundle, '--stdio']),
      ZW_FILE: `${folder}/piano/piano.sfz`,
      ZW_RESULT: `${folder}/result.json`,
      XDG_STATE_HOME: `${folder}/state`,
      XDG_CACHE_HOME: `${folder}/cache`,
      XDG_CONFIG_HOME: `${folder}/config`,
      XDG_DATA_HOME: `${folder}/data`,
    };
    await promisify(execFile)('nvim', ['--headless', '-u', 'NONE', '-i', 'NONE', '-n', '-S', script], {
      env: { ...process.env, ...places },
      timeout: 100_000,
    });
    const result = JSON.parse(await readFile(places.ZW_RESULT, 'utf8')) as Result;
    expect(result.problem).toBeUndefined();
    const codes = (found: Found[]) => found.map(({ code, line }) => `${line} ${code}`).sort();
    expect(codes(result.findings)).toEqual(
      expect.arrayContaining(['3 syntax-error', '4 opcode-unknown', '4 sample-missing']),
    );
    expect(result.completion).toEqual(expect.arrayContaining(['lokey', 'lochan']));
    expect(result.hover.value).toContain('-144 to 6');
    expect(result.renamed).toContain('#define $ROOT 60');
    expect(result.renamed).toContain('key=$ROOT');
    expect(result.renamed).not.toContain('$KEY');
    expect(result.formatted).not.toContain('   sample');
    expect(result.formatted.replace(/\s+/g, ' ').trim()).toBe(result.renamed.replace(/\s+/g, ' ').trim());
    expect(result.actions.length).toBeGreaterThan(0);
    expect(result.fixed).toContain('lokey=61');
    expect(codes(result.left).filter((one) => one.includes('opcode-unknown'))).toEqual([]);
  });
});
