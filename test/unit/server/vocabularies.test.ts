import { writeFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import type {
  CodeAction,
  CodeLens,
  CompletionList,
  Hover,
  TextDocumentEdit,
} from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { WaveFile } from 'wavefile';
import { ConvertTableRequest } from '../../../server/protocol/requests/tableRequests';
import { EditorClient } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

const smithy = `<smithy>
  <bar recording="low.wav" lowest-key="48" highest-key="62" root-key="57" loudness="1"/>
  <bar recording="high.wav" lowest-key="63" highest-key="84" root-key="69" loudness="1"/>
</smithy>
`;

const atClient = { options: { saveVocabularyCommand: 'test.save', openCommand: 'test.open' } };

async function lenses(client: EditorClient, uri: string): Promise<CodeLens[]> {
  return client.ask('textDocument/codeLens', uri);
}

async function quickFixes(client: EditorClient, uri: string): Promise<CodeAction[]> {
  return client.ask('textDocument/codeAction', uri, {
    range: { start: { line: 1, character: 0 }, end: { line: 2, character: 90 } },
    context: { diagnostics: [], only: ['quickfix'] },
  });
}

describe('XML in a vocabulary that is not known', () => {
  it('is read as it was worked out, which stands above it with the points that are open', async () => {
    const client = await EditorClient.start(bundle, { folder, ...atClient });
    const uri = await client.open('smithy.xml', smithy, 'xml');
    const findings = await client.findings(uri);
    expect(findings.filter((one) => one.startsWith('vocabulary-doubt'))).toHaveLength(1);
    expect(findings.filter((one) => one.startsWith('sample-missing'))).toHaveLength(2);
    const [lens, keep] = await lenses(client, uri);
    expect(lens?.command?.title).toMatch(/^Read as "smithy", worked out from this text, 1 point open$/);
    expect(lens?.range.start).toEqual({ line: 0, character: 0 });
    expect(keep?.command).toMatchObject({
      command: 'test.save',
      arguments: [client.uri('smithy.vocabulary.json'), expect.any(String), false],
    });
  });

  it('is settled by a fix, and read by the file from then on', async () => {
    const client = await EditorClient.start(bundle, { folder, ...atClient });
    const uri = await client.open('smithy.xml', smithy, 'xml');
    await client.findings(uri);
    const fixes = (await quickFixes(client, uri)).filter(({ command }) => command?.command === 'test.save');
    expect(fixes.length).toBeGreaterThan(1);
    const other = fixes.find(({ title }) => /dB/.test(title));
    const text = other?.command?.arguments?.[1] as string;
    await writeFile(`${folder}/smithy.vocabulary.json`, text);
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: client.uri('smithy.vocabulary.json'), type: 1 }],
    });
    expect((await client.findings(uri)).filter((one) => one.startsWith('vocabulary-doubt'))).toEqual([]);
    const [lens] = await lenses(client, uri);
    expect(lens?.command).toMatchObject({
      title: 'Read as "smithy" by smithy.vocabulary.json',
      command: 'test.open',
      arguments: [client.uri('smithy.vocabulary.json')],
    });
  });

  it('is kept by creating a file where the client has no command for that', async () => {
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('smithy.xml', smithy, 'xml');
    const [fix] = (await quickFixes(client, uri)).filter(({ diagnostics }) =>
      diagnostics?.some(({ code }) => code === 'vocabulary-doubt'),
    );
    expect(fix?.command).toBeUndefined();
    expect(fix?.edit?.documentChanges?.[0]).toMatchObject({
      kind: 'create',
      uri: client.uri('smithy.vocabulary.json'),
    });
    const written = fix?.edit?.documentChanges?.[1] as TextDocumentEdit | undefined;
    expect(JSON.parse((written?.edits[0] as { newText: string } | undefined)?.newText ?? '')).toMatchObject({
      name: 'smithy',
    });
  });

  it('is left alone where it is no instrument', async () => {
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('page.xml', '<page><part title="a"/><part title="b"/></page>', 'xml');
    expect(await client.findings(uri)).toEqual([]);
    expect(await lenses(client, uri)).toEqual([]);
  });
});

describe('features in a vocabulary', () => {
  it('complete what the vocabulary has and tell what stands there', async () => {
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open(
      'smithy.xml',
      smithy.replace('<bar recording="low.wav"', '<bar  recording="low.wav"'),
      'xml',
    );
    const { items } = await client.ask<CompletionList>('textDocument/completion', uri, {
      position: { line: 1, character: 7 },
    });
    const labels = items.map(({ label }) => label);
    expect(labels.sort()).toEqual(['highest-key', 'loudness', 'lowest-key', 'recording', 'root-key']);
    const hover = await client.ask<Hover | null>('textDocument/hover', uri, {
      position: { line: 1, character: smithy.split('\n')[1]?.indexOf('est-key') ?? 0 },
    });
    expect(JSON.stringify(hover?.contents)).toContain('lokey');
  });

  it('paste a copied table in the kind of the regions that are there', async () => {
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('smithy.xml', smithy, 'xml');
    const table = 'Sample\tLow Key\tHigh Key\tRoot\tVolume\nmid.wav\t85\t90\t88\t0\ntop.wav\t91\t99\t95\t0\n';
    const at = { line: 3, character: 0 };
    const result = await client.connection.sendRequest(ConvertTableRequest.type, {
      uri,
      range: { start: at, end: at },
      text: table,
    });
    const text = TextDocument.applyEdits(TextDocument.create('', '', 1, smithy), [
      { range: { start: at, end: at }, newText: result?.insertText ?? '' },
    ]);
    expect(text).toBe(
      smithy.replace(
        '</smithy>',
        `  <bar recording="mid.wav" lowest-key="85" highest-key="90" root-key="88"/>
  <bar recording="top.wav" lowest-key="91" highest-key="99" root-key="95"/>
</smithy>`,
      ),
    );
  });

  it('paste frames as seconds by the rate of the sample that they belong to', async () => {
    const wav = new WaveFile();
    wav.fromScratch(1, 48_000, '16', new Int16Array(48_000));
    await writeFile(`${folder}/mid.wav`, wav.toBuffer());
    const client = await EditorClient.start(bundle, { folder });
    const mill = `<mill>
  <stone sound="low.wav" lowest-key="48" highest-key="62" root-key="57" loop-start-seconds="0.25" loop-end-seconds="1.5"/>
</mill>
`;
    const uri = await client.open('mill.xml', mill, 'xml');
    const at = { line: 2, character: 0 };
    const result = await client.connection.sendRequest(ConvertTableRequest.type, {
      uri,
      range: { start: at, end: at },
      text: 'Sample\tLow Key\tHigh Key\tRoot\tLoop Start\tLoop End\nmid.wav\t85\t90\t88\t24000\t36000\n',
    });
    const text = TextDocument.applyEdits(TextDocument.create('', '', 1, mill), [
      { range: { start: at, end: at }, newText: result?.insertText ?? '' },
    ]);
    expect(text).toContain('root-key="88" loop-start-seconds="0.5" loop-end-seconds="0.75"/>');
  });
});
