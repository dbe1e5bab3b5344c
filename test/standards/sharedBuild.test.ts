// The files for build services in docs/library.md, run step by step as they stand there: the jobs of a matrix, and jobs that are numbered.
// What services do around the steps (a checkout, keeping results, handing them on) is done here as their public documentation says
// (from memory): a job ends at its first step that fails, an artifact holds what is in its path, `after_script` runs in any case.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../temporaryFolder';
import { waveBytes } from '../unit/server/host/waveBytes';

const repository = join(__dirname, '../..');
const program = join(repository, 'dist/cli.js');
const documented = readFileSync(join(repository, 'docs/library.md'), 'utf8');
const [matrixFile, numberedFile] = [...documented.matchAll(/```yaml\n([\s\S]*?)```/g)].map(
  ([, text]) => text,
);
const place = temporaryFolder('zonewright-shared');
const whole = join(place, 'whole');

/** Five instruments, one of which cannot be built, with packs; the title is that of the documentation. */
function writeLibrary(folder: string): void {
  const names = ['Bell', 'Buoy', 'Gong', 'Horn'];
  const put = (path: string, content: string | Uint8Array) => {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  };
  for (const [at, name] of names.entries()) {
    put(`old/${name}.sfz`, `<region> sample=${name}.wav key=${60 + at}\n`);
    put(`old/${name}.wav`, waveBytes(100 + at));
  }
  const library = {
    title: 'Harbour collection',
    facts: { licence: 'CC0 1.0' },
    build: { pack: true },
    instruments: [...names, 'Lost'].map((name) => ({ name, source: `old/${name}.sfz` })),
  };
  put('zonewright.library.json', JSON.stringify(library));
}

function shell(folder: string, script: string, variables: Record<string, string> = {}): number {
  const path = `${join(place, 'bin')}${delimiter}${process.env.PATH}`;
  const { status } = spawnSync('bash', ['-e', '-c', script], {
    cwd: folder,
    env: { ...process.env, ...variables, PATH: path },
  });
  return status ?? -1;
}

/** The lines of a job, up to the next key as far left as its own. */
function jobOf(file: string, name: string): string {
  const indent = new RegExp(`^( *)${name}:$`, 'm').exec(file)?.[1];
  if (indent === undefined) throw new Error(`no job ${name}`);
  const from = file.slice(file.search(new RegExp(`^ *${name}:$`, 'm')) + indent.length + name.length + 2);
  const end = from.search(new RegExp(`^ {0,${indent.length}}\\S`, 'm'));
  return end < 0 ? from : from.slice(0, end);
}

const found = (text: string, pattern: RegExp): string[] => [...text.matchAll(pattern)].map(([, one]) => one);

/** The names and bytes of all files below a folder. */
function contentOf(folder: string): Record<string, string> {
  const paths = existsSync(folder) ? readdirSync(folder, { recursive: true, withFileTypes: true }) : [];
  return Object.fromEntries(
    paths
      .filter((one) => one.isFile())
      .map((one) => join(one.parentPath, one.name))
      .map((path) => [path.slice(folder.length), readFileSync(path, 'base64')]),
  );
}

/** What the parts are together, without the overview that each has of its own. */
function joinedOf(folders: readonly string[]): Record<string, string> {
  const all = Object.assign({}, ...folders.map(contentOf)) as Record<string, string>;
  for (const name of ['/report.html', '/library.md']) delete all[name];
  return all;
}

beforeAll(() => {
  mkdirSync(join(place, 'bin'), { recursive: true });
  // A machine of the parts has one core, so that it starts no threads, of which each loads the program again.
  const oneCore = 'case "$*" in *" build "*--part*) set -- "$@" --threads 1;; esac';
  const start = `#!/bin/sh\n${oneCore}\nexec "${process.execPath}" "${program}" "$@"\n`;
  writeFileSync(join(place, 'bin/zonewright'), start, { mode: 0o755 });
  // Installing the program takes the network; a test of the package does it elsewhere.
  writeFileSync(join(place, 'bin/npm'), '#!/bin/sh\nexit 0\n', { mode: 0o755 });
  writeLibrary(whole);
  expect(shell(whole, 'zonewright library build')).toBe(1);
});

/** Ten and six programs, one after the other, take minutes beside much else. */
const patience = { timeout: 400_000 };
const isThere = existsSync(program) && process.platform !== 'win32';

describe.skipIf(!isThere)(
  'a build that is shared between machines, as the documentation says',
  patience,
  () => {
    it('by a matrix of jobs gives what one machine gives', () => {
      const artifacts = join(place, 'artifacts');
      const build = jobOf(matrixFile, 'build');
      const parts = found(build, /part: \[(.*)\]/g)[0].split(', ');
      expect(parts).toHaveLength(8);
      for (const part of parts) {
        const filled = build.replaceAll(/\$\{\{ matrix\.part \}\}/g, part);
        const machine = join(place, `matrix-${part}`);
        writeLibrary(machine);
        for (const step of found(filled, /- run: (.*)/g)) if (shell(machine, step) !== 0) break;
        for (const [, name, path] of filled.matchAll(
          /upload-artifact@v4\n\s+with:\n\s+name: (.*)\n\s+path: (.*)/g,
        ))
          if (existsSync(join(machine, path)))
            cpSync(join(machine, path), join(artifacts, name), { recursive: true });
      }
      const report = jobOf(matrixFile, 'report');
      const machine = join(place, 'matrix-report');
      writeLibrary(machine);
      const [path] = found(report, /download-artifact@v4\n\s+with: \{ path: (.*),/g);
      const [pattern] = found(report, /pattern: (.*)\* \}/g);
      const kept = readdirSync(artifacts);
      for (const name of kept.filter((one) => one.startsWith(pattern)))
        cpSync(join(artifacts, name), join(machine, path, name), { recursive: true });
      for (const step of found(report, /- run: (.*)/g)) expect(shell(machine, step)).toBe(0);
      expectWhole(
        machine,
        kept.filter((one) => one.startsWith('built-')).map((one) => join(artifacts, one)),
        kept.filter((one) => one.startsWith('packs-')).map((one) => join(artifacts, one)),
      );
    });

    it('by numbered jobs gives what one machine gives', () => {
      const build = jobOf(numberedFile, 'build');
      const [script, afterwards] = build.split('after_script:');
      const artifacts = join(place, 'kept');
      const total = 2;
      const [paths] = found(build, /paths: \[(.*)\]\n {2}cache/g);
      const packs: string[] = [];
      for (let index = 1; index <= total; index++) {
        const machine = join(place, `numbered-${index}`);
        writeLibrary(machine);
        const variables = { CI_NODE_INDEX: String(index), CI_NODE_TOTAL: String(total) };
        for (const step of found(script, /^ {4}- (.*)/gm)) if (shell(machine, step, variables) !== 0) break;
        for (const step of found(afterwards, /^ {4}- (.*)/gm)) shell(machine, step, variables);
        for (const path of paths.split(', '))
          if (existsSync(join(machine, path)))
            cpSync(join(machine, path), join(artifacts, path), { recursive: true });
        packs.push(join(machine, 'packs'));
      }
      for (const step of found(jobOf(numberedFile, 'report'), /^ {4}- (.*)/gm))
        expect(shell(artifacts, step)).toBe(0);
      const built = readdirSync(join(artifacts, 'parts')).map((name) => join(artifacts, 'parts', name));
      expect(built).toHaveLength(total);
      expectWhole(artifacts, built, packs);
    });
  },
);

/** That an overview, what was built and what was packed are those of one machine. */
function expectWhole(overview: string, built: readonly string[], packs: readonly string[]): void {
  for (const name of ['report.html', 'library.md'])
    expect(readFileSync(join(overview, name), 'utf8')).toBe(readFileSync(join(whole, 'built', name), 'utf8'));
  expect(joinedOf(built)).toEqual(joinedOf([join(whole, 'built')]));
  expect(Object.keys(joinedOf([join(whole, 'built')])).length).toBeGreaterThan(10);
  expect(joinedOf(packs)).toEqual(joinedOf([join(whole, 'packs')]));
  expect(Object.keys(joinedOf([join(whole, 'packs')]))).toHaveLength(4);
}
