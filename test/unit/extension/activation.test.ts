import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, it } from 'vitest';
import { contributes } from '../../../package.json';
import { temporaryFolder } from '../../temporaryFolder';
import type { Released } from '../server/host/releasedBundle';
import { buildReleased } from '../server/host/releasedBundle';
import type { Activation } from './activateAlone';
import { activateAlone } from './activateAlone';

const root = fileURLToPath(new URL('../../..', import.meta.url));

// What an editor loads and runs before the extension is there. The bound is our choice: with the library for the protocol, which
// took most of the time, it was half a million bytes.
const mostBytes = 150_000;

let out: string;
let client: Released;
let activation: Activation;

beforeAll(async () => {
  out = temporaryFolder('zonewright-released');
  client = await buildReleased(root, 'client/main.ts', out);
  activation = await activateAlone(root, join(out, 'client.js'));
});

it('registers every command of the extension', () => {
  const told = contributes.commands.map(({ command }) => command);
  expect(told.length).toBeGreaterThan(20);
  expect(told.filter((command) => !activation.commands.includes(command))).toEqual([]);
});

it('loads nothing but what stands before the first request of the server', async () => {
  expect(activation.scripts.sort()).toEqual([...client.atStart].sort());
  let bytes = 0;
  for (const path of client.atStart) bytes += (await stat(path)).size;
  expect(bytes).toBeGreaterThan(mostBytes / 4);
  expect(bytes).toBeLessThanOrEqual(mostBytes);
});

it('loads the library of the protocol later', () => {
  const libraries = client.sourcesAtStart.filter((path) => path.includes('node_modules/'));
  expect([...new Set(libraries.map((path) => path.replace(/^.*node_modules\/([^/]+)\/.*$/, '$1')))]).toEqual([
    'vscode-jsonrpc',
  ]);
  expect(client.later.length).toBeGreaterThan(0);
});
