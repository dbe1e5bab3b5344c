import { describe, expect, it } from 'vitest';
import { CancellationTokenSource, type WorkDoneProgressReport } from 'vscode-languageserver-protocol';
import { ConvertTableRequest } from '../../../server/protocol/requests/tableRequests';
import { EditorClient } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

const rows = 60_000;
const table = [
  'Sample\tLow Key\tHigh Key\tRoot',
  ...Array.from({ length: rows }, (_, row) => `note ${row}.wav\t${row % 120}\t${(row % 120) + 4}\t60`),
].join('\n');
const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

describe('a long table', () => {
  it('is read with word of how far it is', async () => {
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('a.sfz', '');
    const kinds: string[] = [];
    const shares: number[] = [];
    client.connection.onNotification(
      '$/progress',
      ({ value }: { value: WorkDoneProgressReport | { kind: 'begin' | 'end' } }) => {
        kinds.push(value.kind);
        if (value.kind === 'report' && value.percentage !== undefined) shares.push(value.percentage);
      },
    );
    const parameters = { uri, range, text: table, workDoneToken: 'table' };
    const result = await client.connection.sendRequest(ConvertTableRequest.type, parameters);
    expect(result?.regionCount).toBe(rows);
    expect(kinds[0]).toBe('begin');
    expect(kinds.at(-1)).toBe('end');
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares.every((share) => share >= 0 && share <= 100)).toBe(true);
  });

  it('is given up when nobody waits for it, and other requests are answered meanwhile', async () => {
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('a.sfz', '<region> sample=*sine key=60\n');
    const source = new CancellationTokenSource();
    const converted = client.connection.sendRequest(
      ConvertTableRequest.type,
      { uri, range, text: table },
      source.token,
    );
    const outcome = converted.then(
      () => 'converted',
      (error: { code: number }) => error.code,
    );
    // The answer to this one shows that the server listens while it reads.
    const first = await Promise.race([
      outcome,
      client.ask('textDocument/hover', uri, { position: { line: 0, character: 12 } }).then(() => 'hover'),
    ]);
    source.cancel();
    expect(first).toBe('hover');
    // LSPErrorCodes.RequestCancelled of the Language Server Protocol 3.17.
    expect(await outcome).toBe(-32800);
  });
});
