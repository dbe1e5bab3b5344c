import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { LibraryFile } from '../../../../server/library/libraryFile';
import { folderWith, run } from '../runInFolder';

const name = 'zonewright.library.json';

it('writes a library file, says what is doubtful and left out, and never writes over one', async () => {
  const folder = folderWith({
    'Quay/bell.sfz': '<region> sample=bell.wav key=60\n<region> sample=lost.wav key=61\n',
    'Quay/bell.wav': '',
    'Quay/list.csv': 'item,price\nrope,3\n',
  });
  const answer = await run(folder, ['library', 'new', 'Quay']);
  expect(answer).toMatchObject({ status: 0, error: '' });
  expect(answer.out.split('\n')[0]).toBe(`Quay/${name}: 1 instrument, 0 without a doubt`);
  expect(answer.out).toContain('1 of its 2 samples is not there.');
  expect(answer.out).toContain('list.csv: It is no zone table:');
  const text = readFileSync(join(folder, 'Quay', name), 'utf8');
  const written = JSON.parse(text) as LibraryFile;
  expect(written.instruments?.map((one) => [one.name, one.source, one.pairing?.confidence])).toEqual([
    ['bell', 'bell.sfz', 0.5],
  ]);
  const again = await run(folder, ['library', 'new', 'Quay']);
  expect(again).toMatchObject({ status: 2, out: '' });
  expect(again.error).toContain('is there already');
  expect(readFileSync(join(folder, 'Quay', name), 'utf8')).toBe(text);
});

it('says in one line what it lacks', async () => {
  const folder = folderWith({ 'a.txt': '' });
  for (const words of [[], ['new'], ['new', 'a.txt'], ['new', 'nowhere'], ['newest']]) {
    const { status, error } = await run(folder, ['library', ...words]);
    expect(status).toBe(2);
    expect(error).toMatch(/^zonewright: [^\n]+\n$/);
  }
});
