import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { libraryNote } from '../../../../server/library/report/libraryNote';
import type { LibraryReport } from '../../../../server/library/report/libraryReport';
import { libraryReport, mergedReport } from '../../../../server/library/report/libraryReport';
import { reportPage } from '../../../../server/library/report/reportPage';
import { rowCells, rowHeadings } from '../../../../server/library/report/rowCells';
import { nodeFiles } from '../../../../server/workspace/files/nodeFiles';
import { build, folderOf, libraryFile, opened, put, smallLibrary } from '../build/libraryFolder';

const reported = async (folder: string) => libraryReport(nodeFiles, await opened(folder));
const states = ({ instruments }: LibraryReport) => instruments.map(({ row }) => row.state);

it('tells what was built, what has changed since, what failed and what was never built', async () => {
  const folder = folderOf(smallLibrary());
  expect(states(await reported(folder))).toEqual(['missing', 'missing', 'missing', 'missing']);
  await build(folder);
  expect(states(await reported(folder))).toEqual(['built', 'built', 'failed', 'built']);
  put(folder, { 'old/parts.sfz': '<global> ampeg_release=2\n' });
  rmSync(join(folder, 'built/xml/Reed.instrument.xml'));
  const report = await reported(folder);
  expect(states(report)).toEqual(['stale', 'stale', 'failed', 'built']);
  const [bell, , broken] = report.instruments.map(({ row }) => row);
  expect(bell).toMatchObject({
    ...{
      name: 'Bell',
      source: 'old/bell.sfz',
      text: 'sfz/Bell.sfz',
      map: 'maps/Bell.svg',
      licence: 'CC0 1.0',
    },
    ...{ regions: 2, layers: 1, keys: [60, 61], missing: 1, errors: 1 },
    shapes: [
      [60, 60, 1, 127],
      [61, 61, 1, 127],
    ],
  });
  expect(broken?.message).toMatch(/nothing\.txt is neither/);
});

it('joins what several machines built into what one would have, and tells where they differ', async () => {
  const whole = folderOf(smallLibrary());
  await build(whole);
  const parts = [1, 2].map((part) => ({ part, of: 2, folder: folderOf(smallLibrary()) }));
  for (const { folder, ...part } of parts) await build(folder, { part });
  const outputs = parts.map(({ folder }) => join(folder, 'built'));
  const joined = await mergedReport(nodeFiles, 'Two rivers', outputs);
  const { instruments } = await libraryReport(nodeFiles, await opened(whole), true);
  const byName = (a: (typeof instruments)[0], b: (typeof instruments)[0]) =>
    a.row.name < b.row.name ? -1 : 1;
  expect(joined.instruments).toEqual([...instruments].sort(byName));
  expect(joined.problems).toEqual([]);
  const other = folderOf({ ...smallLibrary(), 'old/parts.sfz': '' });
  await build(other);
  put(other, { 'built/records/odd.json': '{}' });
  const differing = await mergedReport(nodeFiles, '', [...outputs, join(other, 'built'), join(other, 'old')]);
  expect(differing.problems).toEqual([
    expect.stringMatching(/^Bell: two folders tell of it differently/),
    expect.stringMatching(/odd\.json: this is no record/),
    expect.stringMatching(/old: there are no records/),
  ]);
});

it('stands on one page that runs nothing of what it shows, and in a note to be published', async () => {
  const name = 'Bell </script><script>alert(1)</script>';
  const folder = folderOf({
    ...smallLibrary(),
    [libraryFile]: JSON.stringify({
      title: 'Rivers & <b>more</b>',
      instruments: [
        { name, source: 'old/bell.sfz' },
        { name: 'Broken', source: 'old/nothing.txt' },
      ],
    }),
  });
  await build(folder);
  const report = await reported(folder);
  const page = reportPage(report);
  expect(page.match(/<script>/g)).toHaveLength(1);
  expect(page).not.toContain('<b>');
  expect(page).toContain('<h1>Rivers &amp; &lt;b&gt;more&lt;/b&gt;</h1>');
  expect(page).not.toMatch(/(?:src|href)=/);
  const note = libraryNote(report);
  expect(note).toContain('1 instrument, converted with Zonewright.');
  expect(note).toMatch(/## Not converted, or not to all targets\n\n- Broken: nothing\.txt is neither/);
  expect(note).toContain('law differs by country');
});

it('tells how each sounds beside its source, where that was proved, and which targets are lacking', async () => {
  const folder = folderOf({
    [libraryFile]: JSON.stringify({
      build: { prove: true },
      instruments: [{ name: 'Sine', source: 'a.sfz', targets: ['sfz', { notation: 'xml', template: 'b' }] }],
    }),
    'a.sfz': '<region> sample=*sine key=60\n',
  });
  await build(folder);
  const report = await reported(folder);
  const [row] = report.instruments.map((one) => one.row);
  expect(row).toMatchObject({
    state: 'built',
    message: expect.stringContaining('xml: The template b is not there'),
    proof: { verdict: 'alike', worstDb: null, where: '' },
  });
  expect(row && rowCells(row)[rowHeadings.indexOf('Proof')]).toBe('sounds alike');
  expect(reportPage(report)).toMatch(/Played against its source, sfz: sounds alike.*<td>sounds alike<\/td>/s);
  const note = libraryNote(report);
  expect(note).toContain('| sounds alike |');
  expect(note).toContain('- Sine: Not written: xml:');
});
