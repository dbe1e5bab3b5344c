import { mkdtemp } from 'node:fs/promises';
import { afterEach, beforeAll, beforeEach } from 'vitest';
import { temporaryFolder } from '../../../temporaryFolder';
import { EditorClient } from './editorClient';
import { serverBundle } from './serverBundle';

/** A folder for all of the test file. */
export let home: string;
/** The path of the server's bundle. */
export const bundle = serverBundle;
/** The folder of one test, in {@link home}. */
export let folder: string;

/** Gives each test of the file that calls this a fresh folder, and ends its clients. To be called where the file begins. */
export function useServerPlaces(): void {
  beforeAll(async () => {
    home = temporaryFolder('zonewright-server');
  });

  beforeEach(async () => {
    folder = await mkdtemp(`${home}/workspace-`);
  });

  afterEach(() => EditorClient.endAll());
}
