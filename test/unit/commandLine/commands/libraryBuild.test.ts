import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { buildProgress } from '../../../../server/commandLine/commands/libraryProgress';
import { brokenDown } from '../../../../server/library/build/buildThread';
import { smallLibrary } from '../../library/build/libraryFolder';
import { waveBytes } from '../../server/host/waveBytes';
import { folderWith, run } from '../runInFolder';

const files = Object.fromEntries(
  Object.entries(smallLibrary()).map(([path, text]) => [path, path.endsWith('.wav') ? waveBytes(100) : text]),
);

it('builds a library, tells what became of each instrument and answers 1 where one failed', async () => {
  const folder = folderWith(files);
  const first = await run(folder, ['library', 'build']);
  expect(first.status).toBe(1);
  expect(first.out).toContain('4 instruments: 3 built, 0 unchanged, 1 failed\n');
  expect(first.error).toMatch(/Broken failed: nothing\.txt is neither/);
  const again = await run(folder, ['library', 'build', 'zonewright.library.json', '--format', 'json']);
  const { instruments } = JSON.parse(again.out) as { instruments: { name: string; state: string }[] };
  expect(instruments.map(({ name, state }) => [name, state])).toEqual([
    ['Bell', 'unchanged'],
    ['Reed', 'unchanged'],
    ['Broken', 'failed'],
    ['Gong', 'unchanged'],
  ]);
  expect(Object.keys(instruments[0] ?? {})).toEqual([
    ...['name', 'source', 'state', 'message', 'outputs', 'totals', 'notes'],
  ]);
});

it('builds a part alone', async () => {
  const folder = folderWith(files);
  const { status, out } = await run(folder, ['library', 'build', '.', '--part', '2/4']);
  expect([status, out]).toEqual([0, '1 instrument: 1 built, 0 unchanged, 0 failed\n']);
  expect(existsSync(join(folder, 'built/sfz/Reed.sfz'))).toBe(true);
  expect(existsSync(join(folder, 'built/sfz/Bell.sfz'))).toBe(false);
});

it('says in one line what it lacks', async () => {
  const folder = folderWith({ ...files, 'empty/zonewright.library.json': '{}' });
  for (const words of [
    ['nowhere'],
    ['old'],
    ['empty'],
    ['--part', '3/2'],
    ['--part', '0/1'],
    ['--part', 'a'],
  ]) {
    const { status, error } = await run(folder, ['library', 'build', ...words]);
    expect(status).toBe(2);
    expect(error).toMatch(/^zonewright: [^\n]+\n$/);
  }
});

it('tells every few seconds how long it will take', () => {
  let now = 0;
  const told: string[] = [];
  const progress = buildProgress(
    (line) => told.push(line),
    () => now,
  );
  const outcome = {
    ...brokenDown({ name: 'x', fileName: 'x', source: 'x', targets: [], facts: {}, pack: {} }),
  };
  for (let done = 1; done <= 100; done++) {
    now += 1000;
    progress({ ...outcome, state: 'built', message: null }, done, 100);
  }
  expect(told[0]).toBe('5 of 100 instruments done, about 2 min left');
  expect(told.at(-1)).toBe('95 of 100 instruments done, about 5 s left');
  expect(told).toHaveLength(19);
});
