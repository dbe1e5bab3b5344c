import { describe, expect, it } from 'vitest';
import type {
  CodeLens,
  InlayHint,
  SelectionRange,
  SemanticTokens,
  SemanticTokensDelta,
} from 'vscode-languageserver-protocol';
import { EditorClient } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

let client: EditorClient;

async function start(configuration?: unknown): Promise<void> {
  client = await EditorClient.start(bundle, { folder, configuration });
}

const whole = { range: { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } } };
const text = '<group> volume=-3\n<region> sample=*sine key=60\n';

describe('semantic tokens over the protocol', () => {
  it('come whole, then as what changed', async () => {
    await start();
    const uri = await client.open('a.sfz', text);
    const full = await client.ask<SemanticTokens>('textDocument/semanticTokens/full', uri);
    // Language Server Protocol 3.17: five numbers for a token.
    expect(full.data.length).toBe(8 * 5);
    await client.change(uri, 2, {
      range: { start: { line: 1, character: 26 }, end: { line: 1, character: 28 } },
      text: '6',
    });
    const delta = await client.ask<SemanticTokensDelta>('textDocument/semanticTokens/full/delta', uri, {
      previousResultId: full.resultId,
    });
    const data = [...full.data];
    for (const edit of delta.edits) data.splice(edit.start, edit.deleteCount, ...(edit.data ?? []));
    const again = await client.ask<SemanticTokens>('textDocument/semanticTokens/full', uri);
    expect(data).toEqual(again.data);
    expect(delta.edits).toHaveLength(1);
  });

  it('come for a stretch', async () => {
    await start();
    const uri = await client.open('a.sfz', text);
    const range = { start: { line: 1, character: 0 }, end: { line: 2, character: 0 } };
    const { data } = await client.ask<SemanticTokens>('textDocument/semanticTokens/range', uri, { range });
    expect(data.length).toBe(5 * 5);
    expect(data[0]).toBe(1);
  });
});

describe('settings of the reading aids', () => {
  it('show key names unless told otherwise', async () => {
    await start();
    const uri = await client.open('a.sfz', text);
    const hints = () => client.ask<InlayHint[]>('textDocument/inlayHint', uri, whole);
    expect((await hints()).map(({ label }) => label)).toEqual(['C4']);
    client.configuration = { hints: { keyNames: false, effectiveValues: true } };
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    expect((await hints()).map(({ label }) => label)).toEqual(['volume=-3']);
  });

  it('show counts above headers unless told otherwise', async () => {
    await start();
    const uri = await client.open('a.sfz', text);
    const lenses = () => client.ask<CodeLens[]>('textDocument/codeLens', uri);
    expect((await lenses()).map(({ command }) => command?.title)).toEqual(['1 region, C4']);
    client.configuration = { codeLens: false };
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    expect(await lenses()).toEqual([]);
  });
});

describe('the way from a header to the map', () => {
  it('is offered to an editor that has a map, with the text of the header and its regions', async () => {
    client = await EditorClient.start(bundle, { folder, options: { mapCommand: 'map.show' } });
    const uri = await client.open('a.sfz', text);
    const lenses = await client.ask<CodeLens[]>('textDocument/codeLens', uri);
    expect(lenses[1]?.command).toEqual({
      title: 'Show on map',
      command: 'map.show',
      arguments: [uri, { start: { line: 0, character: 0 }, end: { line: 1, character: 28 } }],
    });
  });
});

describe('selections over the protocol', () => {
  it('are answered for each position, from the inside out', async () => {
    await start();
    const uri = await client.open('a.sfz', text);
    const [first, second] = await client.ask<SelectionRange[]>('textDocument/selectionRange', uri, {
      positions: [
        { line: 1, character: 27 },
        { line: 0, character: 3 },
      ],
    });
    expect(first?.range.start).toEqual({ line: 1, character: 26 });
    expect(first?.parent?.range.start).toEqual({ line: 1, character: 22 });
    expect(second?.range).toEqual({ start: { line: 0, character: 1 }, end: { line: 0, character: 6 } });
  });
});
