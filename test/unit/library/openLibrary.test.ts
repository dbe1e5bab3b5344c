import { expect, it } from 'vitest';
import { libraryFileName } from '../../../server/library/libraryFile';
import { openLibrary } from '../../../server/library/openLibrary';
import { MemoryFiles } from '../workspace/memoryFiles';

const file = `/lib/${libraryFileName}`;

it('opens a library by its file or folder, and tells faults with their line', async () => {
  const text = '{\n  "tags": [],\n  "instruments": [{ "name": "a", "source": "a.sfz" }]\n}';
  const files = new MemoryFiles({ [file]: text });
  const opened = await openLibrary(files, '/lib');
  expect(opened).toEqual(await openLibrary(files, file));
  expect(opened.kind === 'library' && opened.library.instruments.map(({ source }) => source)).toEqual([
    '/lib/a.sfz',
  ]);
  const problems = opened.kind === 'library' ? opened.library.problems : [];
  expect(problems).toEqual([
    expect.stringMatching(/^zonewright\.library\.json, line 2: A library has no "tags"\./),
  ]);
});

it.each([
  { output: '../elsewhere' },
  { output: '/elsewhere' },
  { pack: { output: 'built/../../elsewhere' } },
])('writes nowhere but in its folder: %j', async (settings) => {
  const instruments = [{ name: 'a', source: 'a.sfz' }];
  const files = new MemoryFiles({ [file]: JSON.stringify({ instruments, ...settings }) });
  expect(await openLibrary(files, '/lib')).toMatchObject({
    kind: 'refused',
    reason: expect.stringContaining('leads out of the folder'),
  });
});

it('says in one line why there is none', async () => {
  const files = new MemoryFiles({ [file]: '[', '/other/a.sfz': '' });
  expect(await openLibrary(files, '/other')).toMatchObject({
    reason: expect.stringContaining('library new'),
  });
  expect(await openLibrary(files, '/nowhere.json')).toMatchObject({ kind: 'refused' });
  expect(await openLibrary(files, '/lib')).toMatchObject({ reason: expect.stringMatching(/line 1: /) });
});
