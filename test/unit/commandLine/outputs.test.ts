import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import {
  closeSync,
  existsSync,
  lstatSync,
  openSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { waveBytes } from '../server/host/waveBytes';
import { folderWith, run } from './runInFolder';

const text = '<region> sample=a.wav key=60\n#include "part.sfz"\n';
const files = { 'a.sfz': text, 'part.sfz': '<region> sample=b.wav key=61\n', 'a.wav': waveBytes(10) };
const posix = process.platform !== 'win32';
const cli = join(__dirname, '../../../dist/cli.js');

describe('an output file', () => {
  it.each([
    ['the input', ['convert', 'a.sfz', '--to', 'xml', '--output', 'a.sfz'], 'a.sfz'],
    [
      'the input by another way',
      ['convert', 'a.sfz', '--to', 'sfz', '--inline', '--output', 'x/../a.sfz'],
      'a.sfz',
    ],
    ['an included file', ['convert', 'a.sfz', '--to', 'sfz', '--output', 'part.sfz'], 'part.sfz'],
    ['a sample', ['convert', 'a.sfz', '--to', 'sfz', '--output', 'a.wav'], 'a.wav'],
    ['the sample by notes', ['convert', 'a.sfz', '--to', 'xml', '--notes', 'a.wav'], 'a.wav'],
    ['a file of another kind by a map', ['map', 'a.sfz', '--output', 'page.html'], 'page.html'],
    ['a file of another kind by a report', ['report', 'a.sfz', '--output', 'README.md'], 'README.md'],
    ['other JSON by notes', ['convert', 'a.sfz', '--to', 'xml', '--notes', 'package.json'], 'package.json'],
    ['other XML', ['convert', 'a.sfz', '--to', 'sfz', '--output', 'feed.xml'], 'feed.xml'],
  ])('does not replace %s unless --force says so', async (_what, args, path) => {
    const folder = folderWith({
      ...files,
      'page.html': '<html></html>',
      'README.md': '# Mill\n',
      'package.json': '{"name": "mill"}',
      'feed.xml': '<feed/>',
    });
    const before = readFileSync(join(folder, path));
    const refused = await run(folder, args);
    expect(refused).toMatchObject({ status: 2 });
    expect(refused.error.trim().split('\n')).toHaveLength(1);
    expect(refused.error).toContain('--force');
    expect(readFileSync(join(folder, path))).toEqual(before);
    expect(await run(folder, [...args, '--force'])).toMatchObject({ status: 0 });
    expect(readFileSync(join(folder, path))).not.toEqual(before);
  });

  it('replaces an earlier one of its kind, and an empty file', async () => {
    const folder = folderWith({ ...files, 'empty.txt': '' });
    for (const output of ['out.xml', 'empty.txt']) {
      for (let again = 0; again < 2; again++) {
        const args = ['convert', 'a.sfz', '--to', 'xml', '--output', output, '--notes', 'notes.md'];
        expect(await run(folder, args)).toMatchObject({ status: 0, error: '' });
      }
    }
    for (let again = 0; again < 2; again++) {
      expect(await run(folder, ['map', 'a.sfz', '--output', 'a.svg'])).toMatchObject({ status: 0 });
      expect(await run(folder, ['report', 'a.sfz', '--output', 'a.md'])).toMatchObject({ status: 0 });
      const csv = ['report', 'a.sfz', '--format', 'csv', '--output', 'a.csv'];
      expect(await run(folder, csv)).toMatchObject({ status: 0 });
      const json = ['convert', 'a.sfz', '--to', 'xml', '--output', 'b.xml', '--notes', 'notes.json'];
      expect(await run(folder, json)).toMatchObject({ status: 0 });
    }
  });

  it('and its notes are two files', async () => {
    const folder = folderWith(files);
    const args = ['convert', 'a.sfz', '--to', 'xml', '--output', 'b.xml', '--notes', './b.xml'];
    expect(await run(folder, args)).toMatchObject({ status: 2 });
    expect(existsSync(join(folder, 'b.xml'))).toBe(false);
  });

  it.skipIf(!posix)('is looked at behind links, which stay', async () => {
    const folder = folderWith({ ...files, 'x/old.sfz': '<region> sample=old.wav\n' });
    symlinkSync('a.sfz', join(folder, 'to-input.sfz'));
    symlinkSync(join(folder, 'x'), join(folder, 'y'));
    symlinkSync('x/old.sfz', join(folder, 'to-old.sfz'));
    symlinkSync('x/new.sfz', join(folder, 'to-new.sfz'));
    const convert = (output: string) =>
      run(folder, ['convert', 'a.sfz', '--to', 'sfz', '--inline', '--output', output]);
    expect(await convert('to-input.sfz')).toMatchObject({ status: 2 });
    expect(readFileSync(join(folder, 'a.sfz'), 'utf8')).toBe(text);
    for (const [link, path] of [
      ['to-old.sfz', 'x/old.sfz'],
      ['to-new.sfz', 'x/new.sfz'],
    ]) {
      expect(await convert(link)).toMatchObject({ status: 0 });
      expect(readlinkSync(join(folder, link))).toBe(path);
      expect(readFileSync(join(folder, path), 'utf8')).toContain('b.wav');
    }
    expect(await convert('y/through.sfz')).toMatchObject({ status: 0 });
    expect(existsSync(join(folder, 'x/through.sfz'))).toBe(true);
  });

  it('clears what writes that were killed have left beside it, and nothing else', async () => {
    const folder = folderWith(files);
    const gone = spawn(process.execPath, ['-e', '']);
    await once(gone, 'exit');
    const old = (name: string) => {
      writeFileSync(join(folder, name), 'half');
      utimesSync(join(folder, name), 1000, 1000);
    };
    old(`out.xml.${gone.pid}.part`);
    old(`out.xml.${process.ppid}.part`);
    old('out.xml.other.part');
    old(`other.xml.${gone.pid}.part`);
    expect(await run(folder, ['convert', 'a.sfz', '--to', 'xml', '--output', 'out.xml'])).toMatchObject({
      status: 0,
    });
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual(
      [`other.xml.${gone.pid}.part`, `out.xml.${process.ppid}.part`, 'out.xml.other.part'].sort(),
    );
  });

  it.skipIf(!posix)('is not written through a name that somebody has put beside it', async () => {
    const folder = folderWith({ ...files, 'victim.txt': 'mine' });
    symlinkSync('victim.txt', join(folder, `out.xml.${process.pid}.part`));
    expect(await run(folder, ['convert', 'a.sfz', '--to', 'xml', '--output', 'out.xml'])).toMatchObject({
      status: 0,
    });
    expect(readFileSync(join(folder, 'victim.txt'), 'utf8')).toBe('mine');
    expect(lstatSync(join(folder, 'out.xml')).isFile()).toBe(true);
  });
});

/** Runs the program as it is released; answers its status and what it said on standard error. */
async function released(
  folder: string,
  args: string[],
  out: number | 'pipe',
  end?: (child: ChildProcess) => void,
) {
  const child = spawn(process.execPath, [cli, ...args], { cwd: folder, stdio: ['ignore', out, 'pipe'] });
  let error = '';
  child.stderr?.on('data', (part) => {
    error += part;
  });
  end?.(child);
  const [status] = (await once(child, 'close')) as [number | null];
  return { status, error };
}

describe.skipIf(!existsSync('/dev/full'))('where nothing can be written', () => {
  const commands = [
    ['regions', 'a.sfz'],
    ['regions', 'a.sfz', '--format', 'json'],
    ['convert', 'a.sfz', '--to', 'xml'],
    ['check', '.'],
    ['check', '.', '--format', 'sarif'],
    ['sample', 'a.wav'],
    ['report', 'a.sfz'],
    ['--help'],
    ['--version'],
  ];

  it.each(commands)('the end of %s %s is status 2 with one line', async (...args) => {
    const folder = folderWith(files);
    const full = openSync('/dev/full', 'w');
    const { status, error } = await released(folder, args, full);
    closeSync(full);
    expect(status).toBe(2);
    expect(error.trim().split('\n')).toEqual([expect.stringMatching(/standard output .*the disk is full/)]);
  });

  it('so too with a file on a full disk', async () => {
    const folder = folderWith(files);
    const { status, error } = await run(folder, ['convert', 'a.sfz', '--to', 'xml', '--output', '/dev/full']);
    expect(status).toBe(2);
    expect(error).toBe('zonewright: /dev/full: cannot be written: the disk is full\n');
  });

  it('but where the reader has had enough, it ends quietly', async () => {
    const regions = '<region> sample=a.wav key=60 volume=-3 ampeg_release=0.5\n'.repeat(20_000);
    const folder = folderWith({ ...files, 'long.sfz': regions });
    const { status, error } = await released(folder, ['regions', 'long.sfz'], 'pipe', (child) =>
      child.stdout?.once('data', () => child.stdout?.destroy()),
    );
    expect({ status, error }).toEqual({ status: 0, error: '' });
  });

  it('and standard error as well, it is told by the status', async () => {
    const folder = folderWith(files);
    const full = openSync('/dev/full', 'w');
    const child = spawn(process.execPath, [cli, 'regions', 'gone.sfz'], {
      cwd: folder,
      stdio: ['ignore', 'ignore', full],
    });
    const [status] = (await once(child, 'close')) as [number | null];
    closeSync(full);
    expect(status).toBe(2);
  });
});

describe.skipIf(!posix)('a pipe in the place of a file', () => {
  it('is told and not waited for', async () => {
    const folder = folderWith({ 'b/x.sfz': '<region> sample=pipe.wav key=60\n#include "pipe.sfz"\n' });
    for (const name of ['pipe.sfz', 'pipe.wav', 'b/pipe.sfz', 'b/pipe.wav'])
      execFileSync('mkfifo', [join(folder, name)]);
    for (const args of [
      ['check', 'pipe.sfz'],
      ['regions', 'pipe.sfz'],
      ['convert', 'pipe.sfz', '--to', 'xml'],
      ['sample', 'pipe.wav', '--measure'],
      ['report', 'pipe.sfz'],
    ]) {
      const { status, error } = await run(folder, args);
      expect({ args, status }).toEqual({ args, status: 2 });
      expect(error).toMatch(/pipe\.\w+: it is no file but a pipe/);
    }
    const { status, out } = await run(folder, ['check', 'b', '--format', 'json']);
    expect(status).toBe(1);
    const [{ findings }] = (JSON.parse(out) as { files: [{ findings: { code: string }[] }] }).files;
    expect(findings.map(({ code }) => code).sort()).toEqual(['include-refused', 'sample-unreadable']);
  });
});
