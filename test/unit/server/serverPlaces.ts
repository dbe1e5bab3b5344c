import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest';
import { bundleServer, EditorClient } from './editorClient';

// A test file that imports this gets a bundled server, a fresh folder for each test, and its clients ended.

/** A folder for all of the test file. */
export let home: string;
/** The path of the server's bundle. */
export let bundle: string;
/** The folder of one test, in {@link home}. */
export let folder: string;

beforeAll(async () => {
  home = await mkdtemp(`${tmpdir()}/zonewright-server-`);
  bundle = await bundleServer(home);
});

beforeEach(async () => {
  folder = await mkdtemp(`${home}/workspace-`);
});

afterEach(() => EditorClient.endAll());

afterAll(() => rm(home, { recursive: true, force: true }));
