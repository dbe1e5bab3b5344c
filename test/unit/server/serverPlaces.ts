import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import { EditorClient } from './editorClient';
import { serverBundle } from './serverBundle';

// A test file that imports this gets a fresh folder for each test, and its clients ended.

/** A folder for all of the test file. */
export let home: string;
/** The path of the server's bundle. */
export const bundle = serverBundle;
/** The folder of one test, in {@link home}. */
export let folder: string;

beforeAll(async () => {
  home = await mkdtemp(`${tmpdir()}/zonewright-server-`);
});

beforeEach(async () => {
  folder = await mkdtemp(`${home}/workspace-`);
});

afterEach(() => EditorClient.endAll());

afterAll(() => rm(home, { recursive: true, force: true }));
