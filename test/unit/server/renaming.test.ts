import { mkdir, readFile, rename, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { describe, expect, it } from 'vitest';
import type {
  DocumentHighlight,
  InitializeResult,
  Location,
  Position,
  RenameFile,
  SymbolInformation,
  TextDocumentEdit,
  WorkspaceEdit,
} from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { URI } from 'vscode-uri';
import { EditorClient, fullCapabilities } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';
import { waveBytes } from './host/waveBytes';

useServerPlaces();

let client: EditorClient;

/** What an editor of today can do when it renames. */
const renaming = {
  ...fullCapabilities,
  workspace: {
    ...fullCapabilities.workspace,
    workspaceEdit: {
      documentChanges: true,
      resourceOperations: ['rename' as const],
      changeAnnotationSupport: {},
    },
  },
  textDocument: { ...fullCapabilities.textDocument, rename: { prepareSupport: true } },
};

async function start(files: Record<string, string | Uint8Array>, capabilities = renaming): Promise<void> {
  for (const [name, content] of Object.entries(files)) {
    await mkdir(dirname(`${folder}/${name}`), { recursive: true });
    await writeFile(`${folder}/${name}`, content);
  }
  client = await EditorClient.start(bundle, { folder, capabilities });
}

async function openFile(name: string): Promise<string> {
  const languageId = name.endsWith('.xml') ? 'instrument-xml' : 'sfz';
  return client.open(name, await readFile(`${folder}/${name}`, 'utf8'), languageId);
}

const at = (line: number, character: number): { position: Position } => ({ position: { line, character } });

const nameOf = (uri: string) => URI.parse(uri).fsPath.slice(folder.length + 1);

/** Makes a change on the disk as an editor does, in the order of the edit. */
async function apply({ documentChanges }: WorkspaceEdit): Promise<void> {
  for (const change of documentChanges ?? []) {
    if ('kind' in change) {
      const { oldUri, newUri } = change as RenameFile;
      await rename(URI.parse(oldUri).fsPath, URI.parse(newUri).fsPath);
      continue;
    }
    const { textDocument, edits } = change;
    const path = URI.parse(textDocument.uri).fsPath;
    const document = TextDocument.create(textDocument.uri, '', 0, await readFile(path, 'utf8'));
    await writeFile(path, TextDocument.applyEdits(document, edits as never));
  }
}

const texts = (...names: string[]) => Promise.all(names.map((name) => readFile(`${folder}/${name}`, 'utf8')));

const parts = {
  'main.sfz': '#define $KEY 60\n#include "part.sfz"\n<region> key=$KEY sample=S/a.wav\n',
  'part.sfz': '<region> key=$KEY sample=S/a.wav locc7=1 locc8=2\n',
  'x/other.instrument.xml':
    '<instrument><control default_path="../S/"/><region sample="a.wav" cutoff_oncc7="1"/></instrument>\n',
  'S/a.wav': waveBytes(10),
};

describe('an editor is told that the server', () => {
  it('renames and takes note when files move', async () => {
    client = EditorClient.connect(bundle, { folder });
    const { capabilities } = await client.connection.sendRequest<InitializeResult>('initialize', {
      processId: process.pid,
      rootUri: null,
      capabilities: renaming,
    });
    expect(capabilities).toMatchObject({
      referencesProvider: true,
      documentHighlightProvider: true,
      workspaceSymbolProvider: true,
      renameProvider: { prepareProvider: true },
    });
    const filters = capabilities.workspace?.fileOperations?.willRename?.filters ?? [];
    expect(filters.map(({ pattern }) => pattern.matches)).toEqual(['file', 'folder']);
    expect(filters[0]?.pattern.glob).toMatch(/wav.*sfz.*xml/);
  });
});

describe('references and highlights', () => {
  it('lead to all files of an instrument, also from a file that it includes', async () => {
    await start(parts);
    const main = await openFile('main.sfz');
    const found = await client.ask<Location[]>('textDocument/references', main, {
      ...at(2, 15),
      context: { includeDeclaration: true },
    });
    const places = (all: Location[]) =>
      all.map(({ uri, range }) => `${nameOf(uri)} ${range.start.line}:${range.start.character}`);
    expect(places(found)).toEqual(['main.sfz 0:8', 'main.sfz 2:13', 'part.sfz 0:13']);

    const part = await openFile('part.sfz');
    const fromPart = await client.ask<Location[]>('textDocument/references', part, {
      ...at(0, 15),
      context: { includeDeclaration: false },
    });
    expect(places(fromPart)).toEqual(['main.sfz 2:13', 'part.sfz 0:13']);
    const definition = await client.ask<Location>('textDocument/definition', part, at(0, 15));
    expect(places([definition])).toEqual(['main.sfz 0:8']);
    const marks = await client.ask<DocumentHighlight[]>('textDocument/documentHighlight', part, at(0, 15));
    expect(marks).toEqual([
      { range: { start: { line: 0, character: 13 }, end: { line: 0, character: 17 } }, kind: 2 },
    ]);
    expect(await client.ask('textDocument/documentHighlight', part, at(0, 2))).toBeNull();
  });
});

describe('workspace symbols', () => {
  it('are found in files that are not open, and in open ones as they stand there', async () => {
    await start({ ...parts, 'y/z.sfz': '<group> group_label=Soft hammers\n<region> sample=../S/a.wav\n' });
    const main = await openFile('main.sfz');
    const find = async (query: string) => {
      const symbols = await client.connection.sendRequest<SymbolInformation[]>('workspace/symbol', { query });
      return symbols.map(
        ({ name, containerName, location }) => `${name} ${containerName} ${nameOf(location.uri)}`,
      );
    };
    expect(await find('softham')).toEqual(['Soft hammers z.sfz y/z.sfz']);
    expect(await find('$key')).toEqual(['$KEY main.sfz main.sfz']);
    expect((await find('a.wav')).sort()).toEqual([
      'a.wav main.sfz main.sfz',
      'a.wav other.instrument.xml x/other.instrument.xml',
      'a.wav part.sfz part.sfz',
      'a.wav z.sfz y/z.sfz',
    ]);
    await client.change(main, 2, { text: '#define $TOP 60\n' });
    expect(await find('$key')).toEqual([]);
    expect(await find('$top')).toEqual(['$TOP main.sfz main.sfz']);
  });
});

describe('renaming', () => {
  it('changes a variable in all files of the instrument, from any of them', async () => {
    await start(parts);
    const part = await openFile('part.sfz');
    expect(await client.ask('textDocument/prepareRename', part, at(0, 15))).toEqual({
      range: { start: { line: 0, character: 14 }, end: { line: 0, character: 17 } },
      placeholder: 'KEY',
    });
    expect(await client.ask('textDocument/prepareRename', part, at(0, 2))).toBeNull();
    const edit = await client.ask<WorkspaceEdit>('textDocument/rename', part, {
      ...at(0, 15),
      newName: 'ROOT',
    });
    // The version of an open document, none for one that is not.
    const versions = (edit.documentChanges as TextDocumentEdit[]).map(({ textDocument }) => [
      nameOf(textDocument.uri),
      textDocument.version,
    ]);
    expect(versions.sort()).toEqual([
      ['main.sfz', null],
      ['part.sfz', 1],
    ]);
    await apply(edit);
    expect(await texts('main.sfz', 'part.sfz')).toEqual([
      '#define $ROOT 60\n#include "part.sfz"\n<region> key=$ROOT sample=S/a.wav\n',
      '<region> key=$ROOT sample=S/a.wav locc7=1 locc8=2\n',
    ]);
  });

  it('says why it cannot be', async () => {
    await start({
      'main.sfz': '#define $KEY 60\n#define $TOP 72\n<region> sample=S/gone.wav\n',
      'S/b.wav': '',
    });
    const main = await openFile('main.sfz');
    const why = (line: number, character: number, newName: string) =>
      client.ask('textDocument/rename', main, { ...at(line, character), newName }).then(
        () => 'done',
        (error: Error) => error.message,
      );
    expect(await why(0, 10, 'TOP')).toBe('$TOP is defined already in line 2. Choose another name.');
    expect(await why(2, 2, 'x')).toMatch(/no variable, label or sample/);
    expect(await why(2, 20, 'b.wav')).toBe('There is no file "gone.wav" to rename.');
  });

  it('renames a sample and changes every instrument that uses it, at once', async () => {
    await start({ ...parts, 'S/b.wav': waveBytes(10) });
    const main = await openFile('main.sfz');
    expect(await client.ask('textDocument/prepareRename', main, at(2, 27))).toMatchObject({
      placeholder: 'a.wav',
    });
    const ask = (newName: string) =>
      client.ask<WorkspaceEdit>('textDocument/rename', main, { ...at(2, 27), newName });
    await expect(ask('b.wav')).rejects.toThrow('There is a file "b.wav" already');
    await expect(ask('sub/c.wav')).rejects.toThrow(/without folders/);
    await expect(ask('c key=1.wav')).rejects.toThrow(/cannot be renamed/);

    const edit = await ask('kick & snare');
    const rename = edit.documentChanges?.at(-1) as RenameFile;
    expect(rename).toMatchObject({ kind: 'rename', newUri: client.uri('S/kick & snare.wav') });
    // A change that asks to be confirmed opens a list in which nothing is ticked.
    expect(edit.changeAnnotations).toBeUndefined();
    expect(JSON.stringify(edit)).not.toContain('annotationId');
    await apply(edit);
    expect(await texts('main.sfz', 'part.sfz', 'x/other.instrument.xml')).toEqual([
      '#define $KEY 60\n#include "part.sfz"\n<region> key=$KEY sample=S/kick & snare.wav\n',
      '<region> key=$KEY sample=S/kick & snare.wav locc7=1 locc8=2\n',
      '<instrument><control default_path="../S/"/><region sample="kick &amp; snare.wav" cutoff_oncc7="1"/></instrument>\n',
    ]);
    expect(await readFile(`${folder}/S/kick & snare.wav`)).toEqual(Buffer.from(waveBytes(10)));
  });

  it('leaves files alone where the editor cannot rename them', async () => {
    await start(parts, fullCapabilities as typeof renaming);
    const main = await openFile('main.sfz');
    await expect(client.ask('textDocument/rename', main, { ...at(2, 27), newName: 'c.wav' })).rejects.toThrow(
      /renames no files/,
    );
  });
});

describe('moving files in the explorer', () => {
  const willRename = (...moves: [string, string][]) =>
    client.connection.sendRequest<WorkspaceEdit | null>('workspace/willRenameFiles', {
      files: moves.map(([from, to]) => ({ oldUri: client.uri(from), newUri: client.uri(to) })),
    });

  it('changes what leads to a folder, in open instruments as they stand in the editor', async () => {
    await start(parts);
    const main = await openFile('main.sfz');
    await client.change(main, 2, { text: '<control> default_path=S/\n<region> sample=a.wav\n' });
    const edit = await willRename(['S', 'Audio']);
    const change = ((edit?.documentChanges ?? []) as TextDocumentEdit[]).find(
      ({ textDocument }) => textDocument.uri === main,
    );
    expect(change?.textDocument.version).toBe(2);
    expect(change?.edits).toEqual([
      { range: { start: { line: 0, character: 23 }, end: { line: 0, character: 25 } }, newText: 'Audio/' },
    ]);
    await apply({ documentChanges: (edit?.documentChanges ?? []).filter((one) => one !== change) });
    // part.sfz stands by itself now.
    expect(await texts('part.sfz', 'x/other.instrument.xml')).toEqual([
      '<region> key=$KEY sample=Audio/a.wav locc7=1 locc8=2\n',
      '<instrument><control default_path="../Audio/"/><region sample="a.wav" cutoff_oncc7="1"/></instrument>\n',
    ]);
  });

  it('changes the paths in an instrument that moves itself', async () => {
    await start(parts);
    const edit = await willRename(['x/other.instrument.xml', 'y/z/other.instrument.xml']);
    await apply(edit ?? {});
    expect(await texts('x/other.instrument.xml')).toEqual([
      '<instrument><control default_path="../../S/"/><region sample="a.wav" cutoff_oncc7="1"/></instrument>\n',
    ]);
  });

  it('has files in a moved folder judged in the instrument that moved along and includes them', async () => {
    await start({
      'home/main.sfz': '#define $KEY 60\n#include "p.sfz"\n',
      'home/p.sfz': '<region> key=$KEY sample=*sine\n',
    });
    expect(await client.findings(await openFile('home/p.sfz'))).toEqual([]);
    expect(await willRename(['home', 'house'])).toBeNull();
    await rename(`${folder}/home`, `${folder}/house`);
    const files = [{ oldUri: client.uri('home'), newUri: client.uri('house') }];
    await client.connection.sendNotification('workspace/didRenameFiles', { files });
    expect(await client.findings(await openFile('house/p.sfz'))).toEqual([]);
  });

  it('changes nothing where nothing leads there, and says what it had to leave', async () => {
    await start({ ...parts, 'p.sfz': '<control> default_path=S/a\n<region> sample=.wav\n' });
    expect(await willRename(['S/b.wav', 'S/c.wav'])).toBeNull();
    await willRename(['S/a.wav', 'S/c.wav']);
    await client.until(() => client.shown.length > 0);
    expect(client.shown[0]).toMatch(/p\.sfz, line 2/);
  });
});
