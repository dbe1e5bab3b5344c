import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { version } from '../../../package.json';
import { uriOfPath } from '../../../server/protocol/conversion/uris';
import type { LibraryProgress } from '../../../server/protocol/requests/libraryRequests';
import { BuildLibraryRequest, LibrariesRequest } from '../../../server/protocol/requests/libraryRequests';
import { build, filesIn, folderOf, libraryFile, smallLibrary } from '../library/build/libraryFolder';
import { EditorClient } from './host/editorClient';
import { bundle, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

it('tells of the libraries of a folder, and builds one in threads with word of how far it is', async () => {
  const folder = folderOf(smallLibrary());
  const client = await EditorClient.start(bundle, { folder });
  const states = async () => {
    const [library] = await client.connection.sendRequest(LibrariesRequest.type, null);
    return library?.rows.map(({ state }) => state);
  };
  expect(await states()).toEqual(['missing', 'missing', 'missing', 'missing']);
  const told: [number, number][] = [];
  client.connection.onNotification('zonewright/libraryProgress', ({ done, all }: LibraryProgress) => {
    told.push([done, all]);
  });
  const uri = uriOfPath(join(folder, libraryFile));
  const order = { uri };
  const first = await client.connection.sendRequest(BuildLibraryRequest.type, order);
  expect(first).toEqual({ built: 3, unchanged: 0, failed: 1 });
  expect(told.at(-1)).toEqual([4, 4]);
  expect(await states()).toEqual(['built', 'built', 'failed', 'built']);
  expect(existsSync(join(folder, 'built/report.html'))).toBe(true);
  // Threads write what one alone would have written.
  const other = folderOf(smallLibrary());
  await build(other, { program: version });
  const { 'report.html': _page, 'library.md': _note, ...files } = filesIn(join(folder, 'built'));
  expect(files).toEqual(filesIn(join(other, 'built')));
  const nowhere = { uri: uriOfPath(join(folder, 'nowhere.json')) };
  expect(await client.connection.sendRequest(BuildLibraryRequest.type, nowhere)).toHaveProperty('problem');
});

it('builds nothing in a folder that is not trusted', async () => {
  const folder = folderOf(smallLibrary());
  const client = await EditorClient.start(bundle, { folder, options: { trusted: false } });
  const order = { uri: uriOfPath(join(folder, libraryFile)) };
  expect(await client.connection.sendRequest(BuildLibraryRequest.type, order)).toEqual({
    problem: 'Trust the folder first: building writes files.',
  });
  expect(existsSync(join(folder, 'built'))).toBe(false);
});
