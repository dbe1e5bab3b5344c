import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../../temporaryFolder';
import { EditorClient } from './host/editorClient';
import { serverBundle } from './host/serverBundle';

let folder: string;

beforeAll(() => {
  folder = temporaryFolder('zonewright');
});
afterAll(() => EditorClient.endAll());

describe.skipIf(process.platform === 'win32')('pipes and sockets among the files', () => {
  it('keep no request waiting', async () => {
    // More of them than the threads that open files.
    const names = Array.from({ length: 8 }, (_, at) => `pipe${at}`);
    for (const name of names) {
      execFileSync('mkfifo', [join(folder, `${name}.wav`), join(folder, `${name}.sfz`)]);
      execFileSync('mkfifo', [join(folder, `${name}.vocabulary.json`)]);
    }
    const socket = createServer().listen(join(folder, 'socket.wav'));
    const text = [...names.map((name) => `${name}.wav`), 'socket.wav', 'there.wav']
      .map((path, key) => `<region> sample=${path} key=${key}\n`)
      .join('');
    writeFileSync(join(folder, 'there.wav'), 'no audio');
    const client = await EditorClient.start(serverBundle, { folder });
    const uri = await client.open('a.sfz', `${text}#include "pipe1.sfz"\n`);
    const found = await client.findings(uri);
    expect(found.filter((one) => one.includes('sample-unreadable'))).toHaveLength(10);
    expect(
      await client.ask('textDocument/hover', uri, { position: { line: 0, character: 18 } }),
    ).not.toBeNull();
    const symbols = await client.connection.sendRequest('workspace/symbol', { query: 'pipe' });
    expect(Array.isArray(symbols)).toBe(true);
    expect(await client.stop()).toBe(0);
    socket.close();
  });
});
