import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { smallLibrary } from '../../library/build/libraryFolder';
import { waveBytes } from '../../server/host/waveBytes';
import { folderWith, run } from '../runInFolder';

const files = Object.fromEntries(
  Object.entries(smallLibrary()).map(([path, text]) => [path, path.endsWith('.wav') ? waveBytes(100) : text]),
);

it('reports on a library in every form, and joins the folders of parts', async () => {
  const folder = folderWith(files);
  await run(folder, ['library', 'build']);
  const text = await run(folder, ['library', 'report']);
  expect(text.out.split('\n')[1]).toMatch(/^Bell\s+built\s+2\s+1\s+1\s+0\s+0\s+CC0 1\.0$/);
  const csv = await run(folder, ['library', 'report', '--format', 'csv']);
  expect(csv.out.split('\r\n')[0]).toMatch(/Proof/);
  expect(csv.out.split('\r\n')[1]).toBe('Bell,built,2,C4 to C#4,1,1,1,0,0,,,,,,0,1,0,0,CC0 1.0,old/bell.sfz');
  const json = await run(folder, ['library', 'report', '--format', 'json']);
  expect(JSON.parse(json.out)).toMatchObject({
    title: 'Two rivers',
    instruments: [{ name: 'Bell', findings: [{ code: 'sample-missing' }] }, {}, { state: 'failed' }, {}],
  });
  // The build leaves the page and the note beside what it built; the report gives the same.
  await run(folder, ['library', 'report', '--output', 'page.html']);
  expect(readFileSync(join(folder, 'page.html'), 'utf8')).toBe(
    readFileSync(join(folder, 'built/report.html'), 'utf8'),
  );
  const note = await run(folder, ['library', 'report', '--format', 'markdown']);
  expect(note.out).toBe(readFileSync(join(folder, 'built/library.md'), 'utf8'));
  const merged = await run(folder, ['library', 'report', '--merge', 'built', 'built', '--title', 'All']);
  expect([merged.status, merged.error]).toEqual([0, '']);
  expect(merged.out.split('\n')[1]).toBe(text.out.split('\n')[1]);
  for (const words of [['--merge'], ['--merge', 'nowhere'], ['nowhere']])
    expect((await run(folder, ['library', 'report', ...words])).status).toBe(2);
});
