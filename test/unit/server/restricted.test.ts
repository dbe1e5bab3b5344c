import { mkdir, symlink, writeFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import type { CompletionList, DocumentSymbol, TextEdit } from 'vscode-languageserver-protocol';
import { EditorClient } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';
import { waveBytes } from './host/waveBytes';

useServerPlaces();

const text = `<control> default_path=Samples/
<region> sample=in.wav
<region> sample=linked.wav
<region> sample=none.wav
<region> sample=../../outside.wav
<region> sample=../../none.wav
<region>   lokye=3 sample=*sine
`;

async function start(options: object, configuration: unknown = {}): Promise<EditorClient> {
  await mkdir(`${folder}/work/Samples`, { recursive: true });
  await writeFile(`${folder}/work/Samples/in.wav`, waveBytes(100));
  await writeFile(`${folder}/outside.wav`, 'not audio');
  await symlink(`${folder}/outside.wav`, `${folder}/work/Samples/linked.wav`);
  await writeFile(`${folder}/work/zonewright.json`, '{ "severity": { "opcode-unknown": "off" } }');
  await writeFile(`${folder}/shared.sfzh`, '<region> sample=*sine\n');
  return EditorClient.start(bundle, { folder: `${folder}/work`, options, configuration });
}

/** The codes of the findings with their lines, from 0. */
async function codes(client: EditorClient, uri: string): Promise<string[]> {
  return (await client.findings(uri)).map((one) => one.replace(/:.*/, '')).sort();
}

describe('a folder that is not trusted', () => {
  it('is checked and edited, but nothing outside is read and its own settings wait', async () => {
    const client = await start({ trusted: false });
    const uri = await client.open('a.sfz', text);
    // The one behind the link may not be read; of those outside nothing is said, and the project file has no say.
    const first = await codes(client, uri);
    expect(first).toEqual(['opcode-unknown 6', 'sample-missing 3', 'sample-unreadable 2']);
    const report = await client.pull(uri);
    expect(JSON.stringify(report)).toContain('before you trust the open folder');

    const symbols = await client.ask<DocumentSymbol[]>('textDocument/documentSymbol', uri);
    expect(symbols.length).toBeGreaterThan(0);
    const at = { position: { line: 6, character: 11 } };
    const { items } = await client.ask<CompletionList>('textDocument/completion', uri, at);
    expect(items.some(({ label }) => label === 'lokey')).toBe(true);
    const options = { options: { tabSize: 2, insertSpaces: true } };
    expect(await client.ask<TextEdit[]>('textDocument/formatting', uri, options)).not.toEqual([]);

    await client.connection.sendNotification('zonewright/trustGranted');
    await client.until(() => client.refreshes > 0);
    expect(await codes(client, uri)).toEqual([
      'sample-missing 3',
      'sample-missing 5',
      'sample-unreadable 2',
      'sample-unreadable 4',
    ]);
    expect(JSON.stringify(await client.pull(uri))).not.toContain('trust');
  });

  it('may not include from elsewhere, whatever a setting says, before it is trusted', async () => {
    const client = await start({ trusted: false }, { includeFolders: ['..'] });
    const uri = await client.open('b.sfz', '#include "../shared.sfzh"\n');
    expect(await codes(client, uri)).toEqual(['include-refused 0']);
    await client.connection.sendNotification('zonewright/trustGranted');
    await client.until(() => client.refreshes > 0);
    await expect.poll(() => codes(client, uri)).toEqual([]);
  });
});

describe('a folder that is trusted', () => {
  it('may include from folders that a setting names, and from others not', async () => {
    const client = await start({}, {});
    const uri = await client.open('b.sfz', '#include "../shared.sfzh"\n');
    expect(await codes(client, uri)).toEqual(['include-refused 0']);
    client.configuration = { includeFolders: ['..'] };
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await expect.poll(() => codes(client, uri)).toEqual([]);
    client.configuration = { includeFolders: [7, ''] };
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await expect.poll(() => codes(client, uri)).toEqual(['include-refused 0']);
  });
});
