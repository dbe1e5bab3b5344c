import { mkdtemp, writeFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import type { TextEdit } from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { EditorClient } from './host/editorClient';
import { bundle, home, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

let client: EditorClient;

const spaces = { tabSize: 4, insertSpaces: true };
const text = '<group> pan=1 key=60\n<region> tune=1  sample=a.wav\n<region> tune=10 sample=b.wav\n';

async function ask(method: string, written: string, more: object, languageId = 'sfz'): Promise<string> {
  const uri = await client.open('a', written, languageId);
  const edits = await client.ask<TextEdit[]>(`textDocument/${method}`, uri, { options: spaces, ...more });
  return TextDocument.applyEdits(TextDocument.create(uri, languageId, 1, written), edits);
}

describe('formatting over the protocol', () => {
  it.each([
    [undefined, '<group>\npan=1\nkey=60\n<region> tune=1 sample=a.wav\n<region> tune=10 sample=b.wav\n'],
    [
      { headers: 'inline' },
      '<group> pan=1 key=60\n<region> tune=1 sample=a.wav\n<region> tune=10 sample=b.wav\n',
    ],
    [
      { headers: 'ownLine' },
      '<group>\npan=1\nkey=60\n<region>\ntune=1\nsample=a.wav\n<region>\ntune=10\nsample=b.wav\n',
    ],
    [
      { opcodeOrder: 'canonical' },
      '<group>\nkey=60\npan=1\n<region> sample=a.wav tune=1\n<region> sample=b.wav tune=10\n',
    ],
    [
      { alignColumns: true },
      '<group>\npan=1\nkey=60\n<region> tune=1  sample=a.wav\n<region> tune=10 sample=b.wav\n',
    ],
  ])('follows the settings %j', async (format, expected) => {
    client = await EditorClient.start(bundle, { folder: home, configuration: { ...(format && { format }) } });
    expect(await ask('formatting', text, {})).toBe(expected);
  });

  it('follows the project file where the editor sets nothing of its own', async () => {
    const folder = await mkdtemp(`${home}/project-`);
    await writeFile(`${folder}/zonewright.json`, '{"format": {"headers": "ownLine", "alignColumns": 3}}');
    client = await EditorClient.start(bundle, {
      folder,
      configuration: { format: { headers: 'regionsInline', opcodeOrder: 'keep', alignColumns: false } },
    });
    expect(await ask('formatting', '<region> key=1', {})).toBe('<region>\nkey=1\n');
    expect(client.shown.join()).toMatch(/format\.alignColumns/);
  });

  it('indents XML as the editor does', async () => {
    client = await EditorClient.start(bundle, { folder: home });
    expect(await ask('formatting', '<instrument><region key="1"/></instrument>', {}, 'instrument-xml')).toBe(
      '<instrument>\n    <region key="1"/>\n</instrument>\n',
    );
  });

  it('lays out a range, and a line that was finished', async () => {
    client = await EditorClient.start(bundle, { folder: home });
    const range = { start: { line: 1, character: 3 }, end: { line: 1, character: 3 } };
    const expected = text.replace('tune=1  sample', 'tune=1 sample');
    expect(await ask('rangeFormatting', text, { range })).toBe(expected);
    expect(await ask('onTypeFormatting', text, { position: { line: 2, character: 0 }, ch: '\n' })).toBe(
      expected,
    );
  });

  it('has nothing to say of a document that is no instrument', async () => {
    client = await EditorClient.start(bundle, { folder: home });
    const uri = await client.open('a.xml', '<html/>', 'xml');
    expect(await client.ask('textDocument/formatting', uri, { options: spaces })).toBeNull();
  });
});
