import { rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, expect, it } from 'vitest';
import type { CompletionList, Hover, SemanticTokens } from 'vscode-languageserver-protocol';
import { temporaryFolder } from '../../temporaryFolder';
import { EditorClient } from './host/editorClient';
import type { Released } from './host/releasedBundle';
import { buildReleased } from './host/releasedBundle';
import { folder, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

const root = fileURLToPath(new URL('../../..', import.meta.url));

// What an editor waits for before the first document: our choice is that it stays below a million bytes.
const mostBytes = 1_000_000;

/** Rooms and files of which nothing is needed for a document in a notation of ours. */
const laterRooms = [
  'comparison',
  'library',
  'pasting',
  'recordings',
  'sound',
  'table',
  'trade/languages',
  'vocabulary/edit',
  'vocabulary/infer/inferVocabulary.ts',
  'vocabulary/read',
  'vocabulary/write',
  'soundfont/read/readFont.ts',
  'soundfont/write',
];

let out: string;
let server: Released;

beforeAll(async () => {
  out = temporaryFolder('zonewright-released');
  server = await buildReleased(root, 'server/main.ts', out);
  // A server that lacks what is loaded later shows that it is not needed.
  for (const path of server.later) await rm(path);
});

it('loads less than a million bytes at its start', async () => {
  let bytes = 0;
  for (const path of server.atStart) bytes += (await stat(path)).size;
  expect(bytes).toBeGreaterThan(mostBytes / 4);
  expect(bytes).toBeLessThanOrEqual(mostBytes);
});

it('loads the rooms for tables, vocabularies, sound and libraries when they are asked for', () => {
  const rooms = laterRooms.filter((room) =>
    server.sourcesAtStart.some((path) => `${path}/`.startsWith(`server/${room}/`)),
  );
  expect(rooms).toEqual([]);
  expect(server.sourcesAtStart.filter((path) => /wasm|opus-decoder|fflate|midi-file/.test(path))).toEqual([]);
});

it.each([
  ['a.sfz', 'sfz', '<region> sample=*sine lokey=60 hikey=50\n', 'range-inverted 0:37-0:39', 26],
  [
    'a.instrument.xml',
    'instrument-xml',
    '<instrument><region sample="*sine" lokey="60" hikey="50"/></instrument>\n',
    'range-inverted 0:53-0:55',
    37,
  ],
])(
  'reads, checks and colours %s with what it has loaded at its start',
  async (name, language, text, finding, on) => {
    const client = await EditorClient.start(join(out, 'server.js'), { folder });
    const uri = await client.open(name, text, language);
    expect(await client.findings(uri)).toEqual([finding]);
    const tokens = await client.ask<SemanticTokens>('textDocument/semanticTokens/full', uri);
    expect(tokens.data.length).toBeGreaterThan(0);
    const position = { line: 0, character: on };
    expect(await client.ask<Hover | null>('textDocument/hover', uri, { position })).not.toBeNull();
    const offers = await client.ask<CompletionList | null>('textDocument/completion', uri, { position });
    expect(offers?.items.length).toBeGreaterThan(0);
    expect(client.stderr).toBe('');
  },
);
