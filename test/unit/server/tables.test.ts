import { mkdir, writeFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import type { TextEdit } from 'vscode-languageserver-textdocument';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { URI } from 'vscode-uri';
import type {
  ConvertTableParams,
  ConvertTableResult,
  PreviewTableParams,
  PreviewTableResult,
} from '../../../server/protocol/requests/tableRequests';
import { EditorClient } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';
import { waveBytes } from './host/waveBytes';

useServerPlaces();

const start = () => EditorClient.start(bundle, { folder });
const cursor = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

const preview = (client: EditorClient, params: PreviewTableParams) =>
  client.connection.sendRequest<PreviewTableResult | null>('zonewright/previewTable', params);
const convert = (client: EditorClient, params: ConvertTableParams) =>
  client.connection.sendRequest<ConvertTableResult | null>('zonewright/convertTable', params);
const applied = (uri: string, text: string, edits: TextEdit[] | undefined) =>
  TextDocument.applyEdits(TextDocument.create(uri, 'sfz', 1, text), edits ?? []);

const table =
  'Zones of the bell\n\nName\tLow\tHigh\tRoot\nbell_p.wav\tC2\tB2\tE2\nbell_f.wav\tC2\tX9\tE2\nbar_p.wav\tC3\tB3\tE3\nbar_f.wav\tC3\tB3\tE3\n';

describe('the preview of a copied table', () => {
  it('shows cells of the first record too, whose labels are the headings', async () => {
    const client = await start();
    const uri = await client.open('a.sfz', '');
    const target = { kind: 'document', uri, range: cursor } as const;
    const record = (name: string, root: number) =>
      `file: ${name}.wav\nlow: ${root - 2}\nhigh: ${root + 2}\nroot: ${root}\n`;
    const shown = await preview(client, { target, text: [record('a', 42), record('b', 47)].join('\n') });
    expect(shown?.columns.map(({ heading, examples }) => [heading, ...examples].join(' '))).toEqual([
      'file a.wav b.wav',
      'low 40 45',
      'high 44 49',
      'root 42 47',
    ]);
  });

  it('tells columns, rows, notes, suggestions and the text', async () => {
    const client = await start();
    const uri = await client.open('a.sfz', '');
    const target = { kind: 'document', uri, range: cursor } as const;
    const shown = await preview(client, { target, text: table });
    expect(shown?.columns.map(({ heading, meaning }) => `${heading}: ${meaning}`)).toEqual([
      'Name: sample',
      'Low: lokey',
      'High: hikey',
      'Root: pitch_keycenter',
    ]);
    for (const { confidence, evidence } of shown?.columns ?? []) {
      expect(confidence).toBeGreaterThan(0);
      expect(confidence).toBeLessThanOrEqual(1);
      expect(evidence.join(' ')).toMatch(/\.$/);
    }
    expect(shown?.columns[0]?.examples).toEqual(['bell_p.wav', 'bell_f.wav', 'bar_p.wav']);
    expect(shown?.rows.map(({ line, isHeading }) => `${line}${isHeading ? ' heading' : ''}`)).toEqual([
      '1',
      '3 heading',
      '4',
      '5',
      '6',
      '7',
    ]);
    const beside = shown?.rows[3]?.notes.map((at) => shown.notes[at]);
    expect(beside).toEqual([expect.objectContaining({ kind: 'dropped', line: 5 })]);
    expect(shown?.groupings.map(({ kind }) => kind)).toEqual(['layers']);
    expect(shown?.middleC).toMatch(/^C[345]$/);
    expect(shown?.markup).toBe(applied(uri, '', shown?.edits));
    expect(shown?.headings).toBe('name\tlow\thigh\troot');
  });

  it('is made anew with what a person decides', async () => {
    const client = await start();
    const uri = await client.open('a.sfz', '');
    const target = { kind: 'document', uri, range: cursor } as const;
    const decided = await preview(client, {
      target,
      text: table,
      columns: [[3, 'unknown']],
      middleC: 'C3',
      groupings: ['layers'],
    });
    // C2 is 48 where C3 is key 60: one octave above 36, its number where C4 is (MIDI key numbers, C-1 = 0).
    expect(decided?.markup).toMatch(/lokey=48 hikey=59/);
    expect(decided?.markup).not.toMatch(/pitch_keycenter/);
    expect(decided?.markup).toMatch(/group_label=p[\s\S]*group_label=f/);
    expect(decided?.columns[3]?.meaning).toBe('unknown');
    expect(decided?.middleC).toBe('C3');
  });

  it('offers samples to choose and writes the one that is chosen', async () => {
    await mkdir(`${folder}/left`);
    await mkdir(`${folder}/right`);
    for (const side of ['left', 'right']) await writeFile(`${folder}/${side}/bell.wav`, waveBytes(10));
    const client = await start();
    const uri = await client.open('a.sfz', '');
    const text = 'Sample\tKey\nbell.wav\t60\ngong.wav\t61\n';
    const target = { kind: 'document', uri, range: cursor } as const;
    const shown = await preview(client, { target, text });
    expect(shown?.samples).toEqual([
      { name: 'bell.wav', choices: ['left/bell.wav', 'right/bell.wav'], taken: 'left/bell.wav' },
    ]);
    const chosen = await preview(client, { target, text, samples: [['bell.wav', 'right/bell.wav']] });
    expect(chosen?.markup).toMatch(/sample=right\/bell\.wav/);
    expect(chosen?.samples[0]?.taken).toBe('right/bell.wav');
  });

  it('shows what a new document would hold, in either notation, with samples of its folder', async () => {
    await mkdir(`${folder}/Takes`);
    await writeFile(`${folder}/Takes/bell.wav`, waveBytes(10));
    const client = await start();
    const folderUri = URI.file(folder).toString();
    for (const format of ['sfz', 'xml'] as const) {
      const text = 'Sample\tKey\nbell.wav\t60\n';
      const shown = await preview(client, { target: { kind: 'new', format, folderUri }, text });
      expect(shown?.markup).toContain('Takes/bell.wav');
      expect(shown?.home).toBe('Takes');
      const name = format === 'sfz' ? 'new.sfz' : 'new.instrument.xml';
      const uri = await client.open(name, shown?.markup ?? '', format === 'sfz' ? 'sfz' : 'instrument-xml');
      expect(await client.findings(uri)).toEqual([]);
    }
  });

  it('finds the folder in which a new document is at home', async () => {
    await mkdir(`${folder}/strings/Samples/soft`, { recursive: true });
    await mkdir(`${folder}/strings/Samples/loud`);
    for (const name of ['soft/a', 'loud/b'])
      await writeFile(`${folder}/strings/Samples/${name}.wav`, waveBytes(10));
    await writeFile(`${folder}/c.wav`, waveBytes(10));
    const client = await start();
    const target = { kind: 'new', format: 'sfz', folderUri: URI.file(folder).toString() } as const;
    const homeOf = async (rows: string) =>
      (await preview(client, { target, text: `Sample\tKey\n${rows}` }))?.home;
    expect(await homeOf('a.wav\t60\nb.wav\t61\n')).toBe('strings');
    expect(await homeOf('a.wav\t60\n')).toBe('strings');
    expect(await homeOf('c.wav\t60\n')).toBeUndefined();
  });

  it('keeps the columns to correct where none holds samples, and says why nothing is written', async () => {
    const client = await start();
    const uri = await client.open('a.sfz', '');
    const target = { kind: 'document', uri, range: cursor } as const;
    const text = 'Low\tHigh\tRoot\n36\t47\t40\n48\t59\t52\n';
    const shown = await preview(client, { target, text });
    expect(shown?.problem).toMatch(/\.$/);
    expect(shown?.columns).toHaveLength(3);
    expect(shown).not.toHaveProperty('edits');
    const nothing = await preview(client, { target, text: '\0\0\0' });
    expect(nothing).toMatchObject({ columns: [], regionCount: 0, problem: expect.stringMatching(/\.$/) });
    const plain = await client.open('b.xml', '<notes/>', 'xml');
    expect(await convert(client, { uri: plain, range: cursor, text: table })).toBeNull();
  });
});

describe('bringing a document up to date', () => {
  it('changes the regions that are there, once', async () => {
    const client = await start();
    const text = '<region> sample=bell.wav lokey=C2 hikey=B2\n<region> sample=gong.wav key=30\n';
    const uri = await client.open('a.sfz', text);
    const rows = 'Sample\tLow\tHigh\nbell.wav\t36\t48\nnew.wav\t50\t51\n';
    const result = await convert(client, { uri, range: cursor, text: rows, update: true });
    expect(result).toMatchObject({ matchCount: 1, changedCount: 1, unchangedCount: 0, addedCount: 1 });
    const after = applied(uri, text, result?.edits);
    expect(after.split('\n').slice(0, 2)).toEqual([
      '<region> sample=bell.wav lokey=C2 hikey=C3',
      '<region> sample=gong.wav key=30',
    ]);
    expect(after).toMatch(/sample=new\.wav/);
    const shown = await preview(client, {
      target: { kind: 'document', uri, range: cursor },
      text: rows,
      update: true,
    });
    expect(shown?.markup.split('\n')[0]).toBe('<region> sample=bell.wav lokey=C2 hikey=C3');
    expect(shown?.markup).not.toMatch(/gong/);
    await client.change(uri, 2, { text: after });
    const again = await convert(client, { uri, range: cursor, text: rows, update: true });
    expect(again).toMatchObject({ changedCount: 0, unchangedCount: 2, addedCount: 0, edits: [] });
  });

  it('writes otherwise, in the same place, what was written before', async () => {
    const client = await start();
    const text = '<region> sample=*sine key=1\n\n<region> sample=*saw key=2\n';
    const uri = await client.open('a.sfz', text);
    const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 0 } };
    const first = await convert(client, { uri, range, text: table });
    const written = first?.insertText ?? '';
    const after = applied(uri, text, [{ range, newText: written }]);
    await client.change(uri, 2, { text: after });
    const document = TextDocument.create(uri, 'sfz', 2, after);
    const at = after.indexOf(written);
    expect(written).not.toBe('');
    const stretch = { start: document.positionAt(at), end: document.positionAt(at + written.length) };
    const second = await convert(client, { uri, range: stretch, text: table, columns: [[3, 'unknown']] });
    const again = [{ range: stretch, newText: second?.insertText ?? '' }];
    const corrected = TextDocument.applyEdits(document, second?.edits ?? again);
    expect(corrected).not.toMatch(/pitch_keycenter/);
    expect(corrected.match(/<region>/g)).toHaveLength(6);
  });
});
