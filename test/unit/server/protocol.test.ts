import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import type {
  CodeAction,
  CompletionItem,
  CompletionList,
  DocumentLink,
  DocumentSymbol,
  FoldingRange,
  Hover,
  Location,
} from 'vscode-languageserver-protocol';
import { CancellationTokenSource } from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { URI } from 'vscode-uri';
import { EditorClient, fullCapabilities, placed } from './host/editorClient';
import { bundle, folder, home, useServerPlaces } from './host/serverPlaces';
import { waveBytes } from './host/waveBytes';

useServerPlaces();

let client: EditorClient;

async function start(options: Partial<Parameters<typeof EditorClient.start>[1]> = {}): Promise<void> {
  client = await EditorClient.start(bundle, { folder, ...options });
}

const withoutPull = { ...fullCapabilities, textDocument: { publishDiagnostics: {} } };
const line = (text: string, number: number, character: number) => ({ line: number, character, text });

describe('the life of a server', () => {
  it('ends with exit code 0 after a shutdown and writes nothing to standard error', async () => {
    await start();
    expect(await client.stop()).toBe(0);
    expect(client.stderr).toBe('');
  });

  it('ends with exit code 1 when told to exit without a shutdown, as the protocol asks', async () => {
    await start();
    const exit = new Promise((resolve) => client.process.once('exit', resolve));
    await client.connection.sendNotification('exit');
    expect(await exit).toBe(1);
  });
});

describe('findings', () => {
  it('are answered for the text as edited, and as unchanged where nothing changed', async () => {
    await start();
    const uri = await client.open('a.sfz', '<region> sample=*sine lokey=60 hikey=50\n');
    const first = await client.pull(uri);
    expect(first.kind === 'full' && first.items.map(placed)).toEqual(['range-inverted 0:37-0:39']);
    expect(await client.pull(uri, first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId });

    // "50" becomes "70", then a line is put before it.
    await client.change(
      uri,
      2,
      { range: { start: { line: 0, character: 37 }, end: { line: 0, character: 38 } }, text: '7' },
      { range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: '<gruop>\r\n' },
    );
    const second = await client.pull(uri, first.resultId);
    expect(second.kind === 'full' && second.items.map(placed)).toEqual(['header-unknown 0:1-0:6']);
  });

  it('carry their code, their source and the places that belong to them', async () => {
    await start();
    const text = '<region> sample=*sine lokey=0 hikey=60\n<region> sample=*saw lokey=50 hikey=127\n';
    const report = await client.pull(await client.open('a.sfz', text));
    const overlap =
      report.kind === 'full' ? report.items.find(({ code }) => code === 'range-overlap') : undefined;
    expect(overlap).toMatchObject({ source: 'zonewright', severity: 2 });
    expect(overlap?.relatedInformation?.[0]?.location).toMatchObject({ uri: client.uri('a.sfz') });
  });

  it('are sent to a client that does not ask, and taken back when the document closes', async () => {
    await start({ capabilities: withoutPull });
    const uri = await client.open('a.sfz', '<regoin>\n');
    await client.until(() => client.sent.get(uri)?.version === 1);
    expect(client.sent.get(uri)?.diagnostics.map(placed)).toEqual(['header-unknown 0:1-0:7']);
    await client.change(uri, 2, {
      range: { start: { line: 0, character: 3 }, end: { line: 0, character: 7 } },
      text: 'gion',
    });
    await client.until(() => client.sent.get(uri)?.version === 2);
    expect(client.sent.get(uri)?.diagnostics).toEqual([]);
    await client.change(uri, 3, { text: '<nothing>\n' });
    await client.until(() => client.sent.get(uri)?.diagnostics.length === 1);
    await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
    await client.until(() => client.sent.get(uri)?.diagnostics.length === 0);
  });

  it('follow samples that appear and vanish', async () => {
    await start();
    const uri = await client.open('a.sfz', '<region> sample=Samples/a.wav\n');
    expect(await client.findings(uri)).toEqual(['sample-missing 0:16-0:29']);
    await mkdir(`${folder}/Samples`);
    await writeFile(`${folder}/Samples/a.wav`, waveBytes(100));
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: client.uri('Samples/a.wav'), type: 1 }],
    });
    await client.until(() => client.refreshes === 1);
    expect(await client.findings(uri)).toEqual([]);
    await rm(`${folder}/Samples`, { recursive: true });
    // The editor tells of the folder alone when all of it is deleted.
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: client.uri('Samples'), type: 3 }],
    });
    await client.until(() => client.refreshes === 2);
    expect(await client.findings(uri)).toEqual(['sample-missing 0:16-0:29']);
  });

  it('have samples watched, outside the workspace too', async () => {
    await mkdir(`${home}/outside`, { recursive: true });
    await start();
    const watchers = () =>
      client.registered
        .filter(({ method }) => method === 'workspace/didChangeWatchedFiles')
        .map(({ registerOptions }) => JSON.stringify(registerOptions));
    await client.until(() => watchers().length === 1);
    expect(watchers()[0]).toContain('wav');
    await client.pull(await client.open('a.sfz', '<region> sample=../outside/a.wav\n'));
    await client.until(() => watchers().length === 2);
    expect(watchers()[1]).toContain(URI.file(`${home}/outside`).toString());
  });

  it('of an included file stand where it is included, and in the file itself when that is open', async () => {
    await mkdir(`${folder}/parts`);
    await writeFile(`${folder}/a.wav`, waveBytes(100));
    await writeFile(`${folder}/parts/keys.sfz`, '<region> sample=$SAMPLE key=200\n');
    const main = '#define $SAMPLE a.wav\n#include "parts/keys.sfz"\n';
    await writeFile(`${folder}/main.sfz`, main);
    await start();
    const report = await client.pull(await client.open('main.sfz', main));
    expect(report.kind === 'full' && report.items.map(placed)).toEqual(['opcode-value 1:10-1:24']);
    expect(report.kind === 'full' && report.items[0]?.relatedInformation?.[0]?.location).toEqual({
      uri: client.uri('parts/keys.sfz'),
      range: { start: { line: 0, character: 28 }, end: { line: 0, character: 31 } },
    });
    // Neither is $SAMPLE unknown there, nor is a.wav looked for beside it.
    const included = await client.open('parts/keys.sfz', '\n<region> sample=$SAMPLE key=200\n');
    expect(await client.findings(included)).toEqual(['opcode-value 1:28-1:31']);
    await client.change(included, 2, { text: '<region> sample=$SAMPLE key=60\n' });
    expect(await client.findings(included)).toEqual([]);
    expect(await client.findings(client.uri('main.sfz'))).toEqual([]);
  });

  it('of an included file are judged in the context of an instrument that is not open', async () => {
    await mkdir(`${folder}/parts`);
    await writeFile(`${folder}/parts/keys.sfz`, '<region> sample=$SAMPLE\n');
    await writeFile(`${folder}/main.sfz`, '#define $SAMPLE *sine\n#include "parts/keys.sfz"\n');
    await start();
    const uri = await client.open('parts/keys.sfz', '<region> sample=$SAMPLE\n');
    expect(await client.findings(uri)).toEqual([]);
    await writeFile(`${folder}/main.sfz`, '// no include any more\n');
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: client.uri('main.sfz'), type: 2 }],
    });
    await client.until(() => client.refreshes === 1);
    expect(await client.findings(uri)).toEqual(['define-unknown 0:16-0:23']);
  });
});

describe('documents that are served', () => {
  it('leaves XML that holds no instrument alone', async () => {
    await start();
    const uri = await client.open('pom.xml', '<project><name a=1></project>', 'xml');
    expect(await client.findings(uri)).toEqual([]);
    const at = { position: { line: 0, character: 10 } };
    expect(await client.ask('textDocument/completion', uri, at)).toBeNull();
    expect(await client.ask('textDocument/hover', uri, at)).toBeNull();
    expect(await client.ask('textDocument/documentSymbol', uri)).toBeNull();
  });

  it('serves plain XML that holds an instrument, as it is at the time', async () => {
    await start();
    const uri = await client.open('a.xml', '<instrument><region lokey="60" hikey="50"/></instrument>', 'xml');
    expect(await client.findings(uri)).toEqual(['range-inverted 0:38-0:40']);
    await client.change(uri, 2, { text: '<other/>' });
    expect(await client.findings(uri)).toEqual([]);
  });

  it('does not look for the samples of a document that is no file', async () => {
    await start();
    const uri = 'untitled:Untitled-1';
    await client.connection.sendNotification('textDocument/didOpen', {
      textDocument: {
        uri,
        languageId: 'sfz',
        version: 1,
        text: '#include "a.sfz"\n<region> sample=a.wav kye=60\n',
      },
    });
    expect(await client.findings(uri)).toEqual(['opcode-unknown 1:22-1:25']);
  });

  it('lives through garbage', async () => {
    await start();
    const bytes = Uint8Array.from({ length: 200_000 }, (_, at) => (at * 7919 + (at >> 3)) & 255);
    const binary = Buffer.from(bytes).toString('latin1');
    const junk = '<region>=$x #include "<!--//\n'.repeat(60_000);
    for (const [name, text] of [
      ['binary.sfz', binary],
      ['junk.sfz', junk],
      ['empty.sfz', ''],
    ] as const) {
      const uri = await client.open(name, text);
      expect((await client.pull(uri)).kind).toBe('full');
      await client.ask('textDocument/documentSymbol', uri);
      await client.ask('textDocument/hover', uri, { position: { line: 0, character: 3 } });
      await client.ask('textDocument/completion', uri, { position: { line: 0, character: 99 } });
    }
    for (const text of [binary, junk.slice(0, 400_000), '<instrument><region lokey="']) {
      const uri = await client.open('x.instrument.xml', text, 'instrument-xml');
      expect((await client.pull(uri)).kind).toBe('full');
      await client.ask('textDocument/completion', uri, { position: { line: 0, character: 27 } });
      await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
    }
    await expect(
      client.ask('textDocument/hover', 'no:such/document', { position: line('', 0, 0) }),
    ).resolves.toBeNull();
    expect(await client.findings(await client.open('good.sfz', '<region> sample=*sine\n'))).toEqual([]);
  });
});

describe('requests', () => {
  it('end when they are cancelled, and the server goes on', async () => {
    await start();
    const uri = await client.open('a.sfz', '<region> sample=*sine key=60\n'.repeat(20_000));
    const source = new CancellationTokenSource();
    const symbols = client.connection.sendRequest(
      'textDocument/documentSymbol',
      { textDocument: { uri } },
      source.token,
    );
    source.cancel();
    const outcome = await symbols.then(
      () => 'answered',
      (error: { code?: number }) => error.code,
    );
    // RequestCancelled of the protocol, or an answer that was under way already.
    expect(['answered', -32800]).toContain(outcome);
    expect((await client.pull(uri)).kind).toBe('full');
  });

  it('give fixes that clear the finding', async () => {
    await start();
    const text = '<region> sample=*sine lokey=60 hikey=50\n<region> sample=*saw key=61 loopmode=no_loop\n';
    const uri = await client.open('a.sfz', text);
    const report = await client.pull(uri);
    const finding =
      report.kind === 'full' ? report.items.find(({ code }) => code === 'range-inverted') : undefined;
    if (!finding) throw new Error('the finding is missing');
    const [action] = await client.ask<CodeAction[]>('textDocument/codeAction', uri, {
      range: finding.range,
      context: { diagnostics: [finding] },
    });
    expect(action).toMatchObject({ kind: 'quickfix', diagnostics: [finding] });
    const change = action?.edit?.documentChanges?.[0];
    if (!change || !('edits' in change)) throw new Error('the edit is missing');
    expect(change.textDocument).toEqual({ uri, version: 1 });
    const edits = change.edits.map((edit) => ({
      range: edit.range,
      newText: 'newText' in edit ? edit.newText : '',
    }));
    const fixed = TextDocument.applyEdits(TextDocument.create(uri, 'sfz', 1, text), edits);
    await client.change(uri, 2, { text: fixed });
    expect(await client.findings(uri)).toEqual(['opcode-alias 1:28-1:36']);

    const all = await client.ask<CodeAction[]>('textDocument/codeAction', uri, {
      range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } },
      context: { diagnostics: [], only: ['source.fixAll'] },
    });
    expect(all.map(({ kind }) => kind)).toEqual(['source.fixAll.zonewright']);
  });

  it('complete what can be written, with documentation for the asking', async () => {
    await mkdir(`${folder}/Samples`);
    await writeFile(`${folder}/Samples/Soft A#3.wav`, '');
    await start();
    const uri = await client.open('a.sfz', '<region> trigger=\nsample=Samples/\nlo\n');
    const items = async (position: object) =>
      (await client.ask<CompletionList>('textDocument/completion', uri, { position })).items;
    expect((await items({ line: 0, character: 17 })).map(({ label }) => label)).toContain('release');
    const [folderItem] = await items({ line: 1, character: 7 });
    expect(folderItem).toMatchObject({ label: 'Samples/', command: { command: 'test.suggest' } });
    expect((await items({ line: 1, character: 15 })).map(({ label }) => label)).toEqual(['Soft A#3.wav']);
    const opcode = (await items({ line: 2, character: 2 })).find(({ label }) => label === 'loccN');
    expect(opcode?.textEdit).toEqual({
      range: { start: { line: 2, character: 0 }, end: { line: 2, character: 2 } },
      newText: `locc\${1:N}=$0`,
    });
    const resolved = await client.connection.sendRequest<CompletionItem>('completionItem/resolve', opcode);
    expect(JSON.stringify(resolved.documentation)).toMatch(/controller/i);
  });

  it('lead to samples and includes, show hovers, outlines and folds', async () => {
    await writeFile(`${folder}/a.wav`, waveBytes(100));
    await writeFile(`${folder}/b.sfz`, '// nothing\n');
    await start();
    const uri = await client.open('a.sfz', '#include "b.sfz"\n<group>\nlokey=c2\n<region> sample=a.wav\n');
    await client.pull(uri);
    const at = (number: number, character: number) => ({ position: { line: number, character } });
    expect((await client.ask<Location>('textDocument/definition', uri, at(3, 18))).uri).toBe(
      client.uri('a.wav'),
    );
    expect((await client.ask<Location>('textDocument/definition', uri, at(0, 12))).uri).toBe(
      client.uri('b.sfz'),
    );
    const links = await client.ask<DocumentLink[]>('textDocument/documentLink', uri);
    const targets = await Promise.all(
      links.map((link) => client.connection.sendRequest<DocumentLink>('documentLink/resolve', link)),
    );
    expect(targets.map(({ target }) => target).sort()).toEqual([client.uri('a.wav'), client.uri('b.sfz')]);
    const hover = await client.ask<Hover>('textDocument/hover', uri, at(3, 18));
    expect(JSON.stringify(hover.contents)).toContain('44100 Hz');
    const symbols = await client.ask<DocumentSymbol[]>('textDocument/documentSymbol', uri);
    expect(symbols.map(({ name, children }) => [name, children?.map((child) => child.name)])).toEqual([
      ['A', ['a']],
    ]);
    const folds = await client.ask<FoldingRange[]>('textDocument/foldingRange', uri);
    expect(folds).toEqual([{ startLine: 1, endLine: 3 }]);
  });
});

describe('settings', () => {
  it('set severities, from the project file and over it from the editor', async () => {
    await writeFile(
      `${folder}/zonewright.json`,
      '{"severity": {"opcode-alias": "error", "header-unknown": "off"}}',
    );
    await start({ configuration: { severity: { 'opcode-alias': 'information' } } });
    const uri = await client.open('a.sfz', '<gruop>\n<region> sample=*sine loopmode=no_loop\n');
    const severities = async () => {
      const report = await client.pull(uri);
      return report.kind === 'full' ? report.items.map(({ code, severity }) => [code, severity]) : [];
    };
    expect(await severities()).toEqual([['opcode-alias', 3]]);
    client.configuration = {};
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await client.until(() => client.refreshes === 1);
    expect(await severities()).toEqual([['opcode-alias', 1]]);
  });

  it('say when a project file cannot be read, and go on without it', async () => {
    await writeFile(`${folder}/zonewright.json`, '{"severity": ');
    await start();
    expect(await client.findings(await client.open('a.sfz', '<gruop>\n'))).toEqual([
      'header-unknown 0:1-0:6',
    ]);
    await client.until(() => client.shown.length === 1);
    expect(client.shown[0]).toContain('zonewright.json');
  });
});

describe('requests of our own', () => {
  it('give the keyboard map and tell of changes from then on', async () => {
    await start();
    const changed: { uri: string; version: number }[] = [];
    const told = new Promise<void>((resolve) =>
      client.connection.onNotification('zonewright/instrumentChanged', (params) => {
        changed.push(params);
        resolve();
      }),
    );
    const uri = await client.open('a.sfz', '<region> sample=*sine lokey=60 hikey=64\n');
    const { scene } = await client.connection.sendRequest<{ scene: { played: object } }>(
      'zonewright/keyboardMap',
      { uri },
    );
    expect(scene.played).toEqual({ lowKey: 60, highKey: 64 });
    await client.change(uri, 2, { text: '<region> sample=*sine key=60\n' });
    await told;
    expect(changed).toEqual([{ uri, version: 2 }]);
    const other = await client.open('a.xml', '<a/>', 'xml');
    expect(await client.connection.sendRequest('zonewright/keyboardMap', { uri: other })).toMatchObject({
      scene: null,
    });
  });

  it('change the text as a gesture on the map wants it, where the text is still the same', async () => {
    await start();
    const uri = await client.open('a.sfz', '<region> sample=*sine lokey=60 hikey=64\n');
    const arrangement = { values: [{ header: 0, hikey: 66 }], copies: [], removed: [] };
    const ask = (version: number) =>
      client.connection.sendRequest('zonewright/arrangeMap', { uri, version, arrangement });
    expect(JSON.stringify(await ask(1))).toContain('"newText":"66"');
    expect(await ask(7)).toEqual({ refusal: expect.stringContaining('changed in the meantime') });
  });

  it('tell what is wrong with regions of a map, in files that are closed too', async () => {
    await writeFile(`${folder}/part.sfz`, '<region> sample=*sine key=60\n<region> sample=gone.wav key=61\n');
    await start();
    const main = '<group> lovell=1\n<region> sample=*sine key=59\n#include "part.sfz"\n';
    const uri = await client.open('main.sfz', main);
    const told = (of: string) => client.connection.sendRequest('zonewright/mapFindings', { uri: of });
    expect(await told(uri)).toEqual({
      version: 1,
      findings: [
        { header: 1, severity: 'warning', message: expect.stringContaining('lovell') },
        { header: 3, severity: 'error', message: expect.stringContaining('gone.wav') },
      ],
    });
    // The part's own map has headers of its own.
    const part = await client.open(
      'part.sfz',
      '<region> sample=*sine key=60\n<region> sample=gone.wav key=61\n',
    );
    expect(await told(part)).toMatchObject({ findings: [{ header: 1, severity: 'error' }] });
  });

  it('add samples to an instrument, each where its sound or its name says', async () => {
    const wave = waveBytes(44_100);
    for (let frame = 0; frame < 44_100; frame++)
      wave.writeInt16LE(Math.round(9000 * Math.sin((2 * Math.PI * 440 * frame) / 44_100)), 44 + 2 * frame);
    await writeFile(`${folder}/pad c4.wav`, wave);
    await start();
    const uri = await client.open('a.sfz', '<group> <region> sample=*sine key=60\n');
    const ask = (version: number, sampleUris: string[]) =>
      client.connection.sendRequest<{ told?: string[]; refusal?: string }>('zonewright/addSamples', {
        uri,
        version,
        sampleUris,
      });
    const sample = uri.replace('a.sfz', 'pad%20c4.wav');
    const added = await ask(1, [sample]);
    // 440 Hz is A4, key 69 (ISO 16); middle C is key 60.
    expect(added.told).toEqual(['"pad c4.wav" is at A4, which is the pitch that it sounds.']);
    expect(JSON.stringify(added)).toMatch(/<group>.*<region> sample=pad c4\.wav .*69/);
    expect((await ask(7, [sample])).refusal).toContain('changed in the meantime');
    expect((await ask(1, [uri])).refusal).toContain('None of these');
  });

  it('list the instruments of the folder without the parts of others, and check one', async () => {
    await writeFile(`${folder}/b.sfz`, '#include "part.sfz"\n<region> sample=gone.wav lokey=70 hikey=60\n');
    await writeFile(`${folder}/part.sfz`, '<group> hivel=90\n');
    await writeFile(`${folder}/page.xml`, '<a/>');
    await start();
    const uris = await client.connection.sendRequest<string[]>('zonewright/instruments', {});
    expect(uris.map((uri) => uri.slice(uri.lastIndexOf('/') + 1))).toEqual(['b.sfz', 'page.xml']);
    const check = (uri: string) => client.connection.sendRequest('zonewright/checkInstrument', { uri });
    expect(await check(uris[0])).toMatchObject({ errors: 2, missingSamples: 1 });
    expect(await check(uris[1])).toBeNull();
  });

  it('give what velocity does to a note, and tuning and loudness that are measured', async () => {
    await start();
    const uri = await client.open('a.sfz', '<region> sample=*sine amp_veltrack=0 volume=-6 lovel=64\n');
    const { regions, velocities } = await client.connection.sendRequest<{
      regions: object[];
      velocities: { velocity: number; levelDb?: number }[];
    }>('zonewright/mapMeasures', { uri, key: 60 });
    expect(regions).toEqual([]);
    expect(velocities[62].levelDb).toBeUndefined();
    expect(velocities[63].levelDb).toBeCloseTo(-6, 6);
  });

  it('make regions of a copied table in the notation of the document', async () => {
    await mkdir(`${folder}/Samples`);
    await writeFile(`${folder}/Samples/low.wav`, waveBytes(100));
    await start();
    const table = 'Sample\tLow key\tHigh key\tRoot\nlow.wav\t36\t47\t40\nhigh.wav\t48\t59\t52\n';
    expect(await client.connection.sendRequest('zonewright/looksLikeTable', { text: table })).toBe(true);
    expect(await client.connection.sendRequest('zonewright/looksLikeTable', { text: '<region> key=1' })).toBe(
      false,
    );
    for (const [name, languageId, text, cursor] of [
      ['a.sfz', 'sfz', '<group> volume=-3\n\n', { line: 1, character: 0 }],
      ['b.instrument.xml', 'instrument-xml', '<instrument>\n  \n</instrument>\n', { line: 1, character: 2 }],
    ] as const) {
      const uri = await client.open(name, text, languageId);
      const range = { start: cursor, end: cursor };
      const result = await client.connection.sendRequest<{
        insertText: string;
        edits?: { range: typeof range; newText: string }[];
        regionCount: number;
      }>('zonewright/convertTable', { uri, range, text: table });
      expect(result.regionCount).toBe(2);
      const document = TextDocument.create(uri, languageId, 1, text);
      const inserted = TextDocument.applyEdits(document, [{ range, newText: result.insertText }]);
      // A change that is nothing but that text is told once.
      if (name === 'a.sfz') expect(result).not.toHaveProperty('edits');
      else expect(TextDocument.applyEdits(document, result.edits ?? [])).toBe(inserted);
      await client.change(uri, 2, { text: inserted });
      // The one file that is there was found in its folder.
      const findings = await client.findings(uri);
      expect(findings.map((finding) => finding.split(' ')[0])).toEqual(['sample-missing']);
      expect(inserted).toContain('Samples/low.wav');
    }
  });

  it('say why a text is no table', async () => {
    await start();
    const uri = await client.open('a.sfz', '');
    const range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
    const result = await client.connection.sendRequest('zonewright/convertTable', {
      uri,
      range,
      text: 'good day',
    });
    expect(result).toMatchObject({ regionCount: 0, problem: expect.stringMatching(/\.$/) });
    expect(result).not.toHaveProperty('insertText');
  });

  it('write the instrument in the other notation', async () => {
    await start();
    const uri = await client.open('a.sfz', '<group> volume=-3\n<region> sample=*sine key=60\n');
    const result = await client.connection.sendRequest<{ text: string }>('zonewright/convert', {
      uri,
      to: 'xml',
    });
    const xml = await client.open('b.instrument.xml', result.text, 'instrument-xml');
    expect(await client.findings(xml)).toEqual([]);
    const back = await client.connection.sendRequest<{ text: string }>('zonewright/convert', {
      uri: xml,
      to: 'sfz',
    });
    expect(back.text).toMatch(/<region> sample=\*sine key=60/);
    expect(await client.connection.sendRequest('zonewright/convert', { uri, to: 'toString' })).toEqual({
      problem: expect.stringContaining('toString'),
    });
  });
});

describe('the bundle', () => {
  it('says how it is started when started by hand', async () => {
    const { spawnSync } = await import('node:child_process');
    const { status, stderr } = spawnSync(process.execPath, [bundle], { encoding: 'utf8' });
    expect(status).toBe(2);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });

  it('takes the whole library along', async () => {
    expect(await readFile(bundle, 'utf8')).not.toMatch(/require\("vscode-/);
  });
});
