import { mkdir, writeFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import type { ConvertParams, ConvertResult } from '../../../server/protocol/requests/conversionRequests';
import { ConvertRequest, VocabulariesRequest } from '../../../server/protocol/requests/conversionRequests';
import { EditorClient } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

const mill = {
  name: 'paper mill',
  levels: [
    {
      element: 'sheet',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@pulp', form: { kind: 'path' } },
        { parameter: 'lokey', at: '@from-key', form: { kind: 'key', written: 'name', middleC: 'C4' } },
        { parameter: 'hikey', at: '@to-key', form: { kind: 'key', written: 'name', middleC: 'C4' } },
        { parameter: 'pan', at: '@lean', form: { kind: 'pan', left: 0, centre: 64, right: 127 } },
      ],
    },
  ],
};

/** What the marks stand at in the converted text. */
function marked({ text, marks }: ConvertResult): string[] {
  const lines = text.split('\n');
  return marks.map(({ kind, range: { start, end } }) => {
    const line = lines[start.line] ?? '';
    return `${kind}: ${line.slice(start.character, start.line === end.line ? end.character : undefined)}`;
  });
}

async function convert(client: EditorClient, params: ConvertParams): Promise<ConvertResult> {
  const result = await client.connection.sendRequest(ConvertRequest.type, params);
  if ('problem' in result) throw new Error(result.problem);
  return result;
}

describe('conversion over the protocol', () => {
  const sfz =
    '#define $SOFT 63\n<region> sample=a.wav key=60 hivel=$SOFT\nstray\n<region> sample=b.wav 1st=2 pan=7\n';

  it('keeps variables, and marks in the new text what the notes are about', async () => {
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('a.sfz', sfz);
    const result = await convert(client, { uri, to: 'xml' });
    expect(result.text).toBe(`<?xml version="1.0" encoding="UTF-8"?>
<instrument>
  <define name="SOFT" value="63"/>
  <region sample="a.wav" key="60" hivel="$SOFT"/>
  <region sample="b.wav" pan="7"/>
</instrument>
`);
    expect(result.kept).toBe(5);
    expect(result.hasRelativePaths).toBe(true);
    expect(result.notes.map(({ kind, line }) => `${kind} ${line}`)).toEqual(['ignored 3', 'dropped 4']);
    expect(marked(result)).toContain('dropped: <region');
    expect(result.page).toMatch(/^# Conversion notes for a\.sfz\n(?:.*\n)*- Left out: 1\n/);
  });

  it('writes variables out where that is asked for', async () => {
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('a.sfz', sfz);
    const { text } = await convert(client, { uri, to: 'xml', directives: 'inline' });
    expect(text).toContain('hivel="63"');
    expect(text).not.toContain('define');
  });

  it('leads sample paths to the files from another folder', async () => {
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('a.sfz', sfz);
    const { text } = await convert(client, { uri, to: 'xml', folderUri: client.uri('deep/er') });
    expect(text).toContain('sample="../../a.wav"');
  });

  it('writes in a vocabulary that a file holds, and back', async () => {
    await writeFile(`${folder}/mill.vocabulary.json`, JSON.stringify(mill));
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('a.sfz', '<region> sample=a.wav lokey=59 hikey=61 pan=7 cutoff=900\n');
    const to = { vocabularyUri: client.uri('mill.vocabulary.json') };
    const there = await convert(client, { uri, to });
    expect(there.text).toBe(`<?xml version="1.0" encoding="UTF-8"?>
<paper-mill>
  <sheet pulp="a.wav" from-key="B3" to-key="C#4" lean="68.41"/>
</paper-mill>
`);
    expect(there.kept).toBe(4);
    expect(marked(there)).toEqual(['assumed: <paper-mill', 'dropped: <sheet']);
    const sheets = await client.open(
      'sheets.xml',
      '<sheet pulp="a.wav" from-key="B3" to-key="C#4" lean="0" hue="red"/>',
      'xml',
    );
    const back = await convert(client, { uri: sheets, to: 'sfz' });
    expect(back.text).toBe('<region> sample=a.wav lokey=59 hikey=61 pan=-100\n');
    expect(back.notes).toMatchObject([{ kind: 'ignored', message: expect.stringContaining('hue="red"') }]);
    expect(back.kept).toBe(4);
  });

  it('knows the vocabulary files in the open folders', async () => {
    await mkdir(`${folder}/deep`, { recursive: true });
    await writeFile(`${folder}/deep/reed.vocabulary.json`, '{}');
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('a.sfz', sfz);
    const files = await client.connection.sendRequest(VocabulariesRequest.type, { uri });
    expect(files).toContainEqual({
      uri: client.uri('deep/reed.vocabulary.json'),
      path: 'deep/reed.vocabulary.json',
    });
  });

  it('says why it cannot be done', async () => {
    await writeFile(`${folder}/broken.vocabulary.json`, '{"name": 3}');
    const client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('a.sfz', sfz);
    const page = await client.open('page.xml', '<page><p>text</p></page>', 'xml');
    const ask = (params: ConvertParams) => client.connection.sendRequest(ConvertRequest.type, params);
    for (const [params, reason] of [
      [{ uri: page, to: 'sfz' }, /no instrument/],
      [
        { uri, to: { vocabularyUri: client.uri('broken.vocabulary.json') } },
        /broken\.vocabulary\.json holds no/,
      ],
      [
        { uri, to: { vocabularyUri: client.uri('gone.vocabulary.json') } },
        /gone\.vocabulary\.json cannot be read/,
      ],
      [{ uri, to: { vocabularyUri: 'untitled:x' } }, /not in a file/],
    ] as [ConvertParams, RegExp][]) {
      expect(await ask(params)).toEqual({ problem: expect.stringMatching(reason) });
    }
  });
});
