import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { removeLeftOut } from '../../../../server/library/build/buildLibrary';
import { writtenFolders } from '../../../../server/library/build/buildState';
import { nodeFiles } from '../../../../server/workspace/files/nodeFiles';
import { clearUnfinished, stagedWriter } from '../../../../server/workspace/files/stagedWriter';
import { build, filesIn, folderOf, libraryFile, opened, put, smallLibrary } from './libraryFolder';

it('takes away what it built of an instrument that is no longer there, but nothing that a person changed', async () => {
  const folder = folderOf(smallLibrary());
  await build(folder);
  writeFileSync(join(folder, 'built/notes/Reed.md'), 'In my own words.');
  put(folder, { [libraryFile]: '{ "instruments": [{ "name": "Bell", "source": "old/bell.sfz" }] }' });
  const library = await opened(folder);
  expect(await removeLeftOut(nodeFiles, stagedWriter(writtenFolders(library)), library)).toEqual([
    'Broken',
    'Gong',
    'Reed',
  ]);
  expect(Object.keys(filesIn(join(folder, 'built'))).filter((path) => !path.includes('Bell'))).toEqual([
    'notes/Reed.md',
  ]);
});

it('leaves alone what another program that runs is writing, and takes away what a gone one left', async () => {
  const folder = folderOf({});
  const writer = stagedWriter([folder]);
  await writer.write(join(folder, 'a/b.txt'), 'whole');
  const [running, gone] = [process.ppid, 2 ** 22 + 1];
  const { hostname } = await import('node:os');
  const nameOf = (pid: number) => `.unfinished/${hostname()} ${pid} 00000000-0000-4000-8000-000000000000`;
  put(folder, { [nameOf(running)]: 'half', [nameOf(gone)]: 'half' });
  clearUnfinished([folder]);
  expect(Object.keys(filesIn(folder)).sort()).toEqual([nameOf(running), 'a/b.txt']);
  rmSync(join(folder, nameOf(running)));
  clearUnfinished([folder]);
  expect(filesIn(folder)).toEqual({ 'a/b.txt': 'whole' });
  await writer.write(join(folder, 'a/c.txt'), 'also after the folder was taken away');
  await writer.remove(join(folder, 'a/b.txt'));
  expect(Object.keys(filesIn(folder)).filter((path) => !path.startsWith('.'))).toEqual(['a/c.txt']);
});
