import { once } from 'node:events';
import { describe, expect, it } from 'vitest';
import type { CodeLens, CompletionItem, CompletionList, Hover } from 'vscode-languageserver-protocol';
import type { EditorOptions } from './host/editorClient';
import { EditorClient } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

let client: EditorClient;

async function start(options: Partial<EditorOptions> = {}): Promise<void> {
  client = await EditorClient.start(bundle, { folder, capabilities: {}, options: {}, ...options });
}

const text = '<group> volume=-3\n<region> sample=*sine key=60\n';

/** The code of the error that answers a request (JSON-RPC 2.0, 5.1); `undefined` where it is served. */
async function errorCode(answer: Promise<unknown>): Promise<number | undefined> {
  return answer.then(
    () => undefined,
    (error: { code: number }) => error.code,
  );
}

describe('texts for people', () => {
  const hoverAs = async (contentFormat?: ('markdown' | 'plaintext')[]) => {
    await start(contentFormat && { capabilities: { textDocument: { hover: { contentFormat } } } });
    const uri = await client.open('a.sfz', text);
    return client.ask<Hover>('textDocument/hover', uri, { position: { line: 0, character: 10 } });
  };

  it('come in the form that the client shows, plain where it names none', async () => {
    const { contents: plain } = await hoverAs();
    expect(plain).toMatchObject({ kind: 'plaintext' });
    expect(JSON.stringify(plain)).toContain('Here: -3');
    expect(JSON.stringify(plain)).not.toMatch(/[`*]/);
    expect((await hoverAs(['plaintext', 'markdown'])).contents).toMatchObject({ kind: 'plaintext' });
    const { contents: marked } = await hoverAs(['markdown', 'plaintext']);
    expect(marked).toMatchObject({ kind: 'markdown' });
    expect(JSON.stringify(marked)).toContain('**volume**');
  });

  it('of completions do so too', async () => {
    await start();
    const uri = await client.open('a.sfz', '<region> vol');
    const { items } = await client.ask<CompletionList>('textDocument/completion', uri, {
      position: { line: 0, character: 12 },
    });
    const item = items.find(({ label }) => label === 'volume');
    const resolved = await client.connection.sendRequest<CompletionItem>('completionItem/resolve', item);
    expect(resolved.documentation).toMatchObject({ kind: 'plaintext' });
  });
});

describe('commands', () => {
  it('of lenses are there, and the server carries them out', async () => {
    await start();
    const uri = await client.open('a.sfz', text);
    const xml = '<kit><voice file="a.wav" low="1" high="20"/><voice file="b.wav" low="21" high="40"/></kit>';
    const other = await client.open('kit.xml', xml, 'xml');
    const lenses = [
      ...(await client.ask<CodeLens[]>('textDocument/codeLens', uri)),
      ...(await client.ask<CodeLens[]>('textDocument/codeLens', other)),
    ];
    expect(lenses.length).toBeGreaterThan(0);
    for (const { command } of lenses) {
      expect(command?.command).not.toBe('');
      await client.connection.sendRequest('workspace/executeCommand', command);
    }
    expect(client.shown).toContain('1 region, C4');
  });

  it('that are not known are an error', async () => {
    await start();
    const params = { command: 'zonewright.noSuchCommand' };
    // InvalidParams of JSON-RPC 2.0.
    expect(await errorCode(client.connection.sendRequest('workspace/executeCommand', params))).toBe(-32602);
  });
});

describe('a session', () => {
  // The error codes are those of the Language Server Protocol 3.17, lifecycle messages.
  it('serves nothing before it is initialized', async () => {
    client = EditorClient.connect(bundle, { folder });
    const hover = { textDocument: { uri: client.uri('a.sfz') }, position: { line: 0, character: 0 } };
    expect(await errorCode(client.connection.sendRequest('textDocument/hover', hover))).toBe(-32002);
    expect(await errorCode(client.connection.sendRequest('shutdown'))).toBe(-32002);
    const exit = once(client.process, 'exit');
    await client.connection.sendNotification('exit');
    expect(await exit).toEqual([1, null]);
  });

  it('is initialized once', async () => {
    await start();
    const params = { processId: null, rootUri: null, capabilities: {} };
    expect(await errorCode(client.connection.sendRequest('initialize', params))).toBe(-32600);
    const uri = await client.open('a.sfz', text);
    expect(await client.ask('textDocument/codeLens', uri)).toHaveLength(1);
  });

  it('serves nothing but exit once it is shut down', async () => {
    await start();
    const uri = await client.open('a.sfz', text);
    await client.connection.sendRequest('shutdown');
    for (const method of ['textDocument/hover', 'textDocument/documentSymbol', 'shutdown', 'initialize'])
      expect(await errorCode(client.ask(method, uri, { position: { line: 0, character: 10 } }))).toBe(-32600);
    await client.change(uri, 2, { text: '' });
    const exit = once(client.process, 'exit');
    await client.connection.sendNotification('exit');
    expect(await exit).toEqual([0, null]);
  });
});
