// Installs the packed command line as a person would, away from the checkout and without a network, and uses it.

import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const onWindows = process.platform === 'win32';
const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const archive = join(root, `dist/zonewright-${version}.tgz`);
const folder = mkdtempSync(join(tmpdir(), 'zonewright-packed-'));

/** Room for what it does; past it something came along that does not belong there. */
const mostBytes = 2 * 1024 * 1024;

try {
  const { size } = statSync(archive);
  assert.ok(size < mostBytes, `the package has ${size} bytes`);
  const prefix = join(folder, 'prefix');
  execFileSync(
    onWindows ? 'npm.cmd' : 'npm',
    ['install', '-g', '--offline', '--no-audit', '--no-fund', '--prefix', prefix, archive],
    { cwd: folder, stdio: 'inherit', shell: onWindows },
  );
  const program = join(prefix, onWindows ? 'zonewright.cmd' : 'bin/zonewright');
  const run = (...args) => {
    const env = { ...process.env, HOME: folder, XDG_CACHE_HOME: join(folder, 'cache'), NODE_PATH: '' };
    const answer = spawnSync(program, args, { cwd: folder, env, encoding: 'utf8', shell: onWindows });
    return { ...answer, all: answer.stdout + answer.stderr };
  };

  assert.equal(run('--version').stdout, `${version}\n`);
  cpSync(join(root, 'samples-demo/millrace-chimes'), join(folder, 'chimes'), { recursive: true });
  writeFileSync(join(folder, 'chimes.sfz'), '<region> sample=chimes/Samples/gone.wav key=60\n');
  // The second start takes what the first has kept.
  for (let start = 0; start < 2; start++) {
    const check = run('check', 'chimes.sfz');
    assert.equal(check.status, 1, check.all);
    assert.match(check.stdout, /sample-missing/);
  }
  const sample = execFileSync(
    process.execPath,
    [
      '-e',
      `
    const names = require('node:fs').readdirSync('chimes/Samples').filter((name) => /\\.wav$/i.test(name)).sort();
    process.stdout.write(names[0]);
  `,
    ],
    { cwd: folder, encoding: 'utf8' },
  );
  assert.equal(run('sample', '--measure', `chimes/Samples/${sample}`).status, 0);
  writeFileSync(join(folder, 'one.sfz'), `<region> sample=chimes/Samples/${sample} key=60\n`);
  const converted = run('convert', 'one.sfz', '--to', 'xml', '--output', 'one.instrument.xml', '--prove');
  assert.equal(converted.status, 0, converted.all);
  const library = { facts: { licence: 'CC0' }, instruments: [{ name: 'One', source: 'one.sfz' }] };
  writeFileSync(join(folder, 'zonewright.library.json'), JSON.stringify(library));
  const built = run('library', 'build');
  assert.equal(built.status, 0, built.all);
  const packed = run('library', 'pack', 'one.sfz', '--audio', 'flac', '--fact', 'licence=CC0');
  assert.equal(packed.status, 0, packed.all);
  assert.ok(statSync(join(folder, 'one.zip')).size > 1000);
  console.log(`The packed command line, ${Math.round(size / 1024)} KB, is installed and works.`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
