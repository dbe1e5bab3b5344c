import { spawnSync } from 'node:child_process';
import { chmodSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import { folderWith, run as runHere } from './runInFolder';

const root = fileURLToPath(new URL('../../..', import.meta.url));
/** Whom nothing is forbidden has to become somebody else; 65534 is nobody (common practice on Linux). */
const other = process.getuid?.() === 0 ? { uid: 65534, gid: 65534 } : {};
let program: string;

beforeAll(async () => {
  const built = await build({
    absWorkingDir: root,
    entryPoints: ['server/cli.ts'],
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'cjs',
    write: false,
    logLevel: 'silent',
  });
  program = built.outputFiles[0]?.text ?? '';
});

/** A mode whose rights of others count; who is others already gets them as the owner. */
function owned(mode: number): number {
  return 'uid' in other ? mode : (mode & 0o77) | ((mode & 0o7) << 6);
}

/** Folders that cannot be listed, not entered, neither; and a file that cannot be read. */
function guardedFolder(): string {
  const folder = folderWith({
    'cli.cjs': program,
    'a.sfz': '',
    'unlisted/a.wav': 'no audio',
    'unentered/a.wav': 'no audio',
    'closed/deep/a.wav': 'no audio',
    'open/a.wav': 'no audio',
    'open/part.sfzh': '<region> sample=*sine\n',
  });
  for (const [path, mode] of [
    ['.', 0o755],
    ['unlisted', 0o711],
    ['unentered', 0o744],
    ['closed', 0o700],
    ['open/a.wav', 0o600],
    ['open/part.sfzh', 0o600],
  ] as const)
    chmodSync(join(folder, path), owned(mode));
  return folder;
}

function run(folder: string, ...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [join(folder, 'cli.cjs'), ...args], {
    cwd: folder,
    encoding: 'utf8',
    ...other,
  });
  return { status, out: stdout, error: stderr };
}

describe.skipIf(process.platform === 'win32')('what this user may not read', () => {
  it('has words of its own, and what may be read is read', () => {
    const folder = guardedFolder();
    writeFileSync(
      join(folder, 'a.sfz'),
      [
        '<region> sample=unlisted/a.wav',
        '<region> sample=unlisted/none.wav',
        '<region> sample=unentered/a.wav',
        '<region> sample=closed/deep/a.wav',
        '<region> sample=open/a.wav',
        '<region> sample=open/none.wav',
        '#include "open/part.sfzh"',
        '#include "closed/part.sfzh"',
      ].join('\n'),
    );
    const { out } = run(folder, 'check', 'a.sfz');
    const lines = out.trimEnd().split('\n').slice(0, -1);
    expect(lines.map((line) => line.replace(/^a\.sfz:(\d+):.*\[(.*)\]$/, '$1 $2'))).toEqual([
      '1 sample-unreadable',
      '2 sample-missing',
      '3 sample-unreadable',
      '4 sample-unreadable',
      '5 sample-unreadable',
      '6 sample-missing',
      '7 include-refused',
      '8 include-refused',
    ]);
    const refused = lines.filter((line) => line.includes('cannot be read: permission'));
    expect(refused.map((line) => line.split(':')[1])).toEqual(['3', '4', '5', '7', '8']);
    expect(lines[0]).toContain('not audio');
  });

  it('is told so where it is named itself', () => {
    const folder = guardedFolder();
    for (const [words, code] of [
      [['check', 'closed/deep/a.wav'], 2],
      [['convert', 'closed/a.sfz', '--to', 'xml'], 2],
      [['sample', 'open/a.wav'], 2],
      [['check', 'closed'], 0],
    ] as const) {
      const { error, status } = run(folder, ...words);
      expect(error, words.join(' ')).toContain('cannot be read: permission');
      expect(status).toBe(code);
    }
  });
});

describe('a hundred folders within each other that are not there', () => {
  it('are found missing', async () => {
    const path = `${Array.from({ length: 100 }, (_, at) => `f${at}`).join('/')}/a.wav`;
    const folder = folderWith({ 'a.sfz': `<region> sample=${path}\n`, 'f0/b.wav': '' });
    const { out } = await runHere(folder, ['check', 'a.sfz']);
    expect(out).toContain('[sample-missing]');
  });
});
