import { readFile, writeFile } from 'node:fs/promises';
import { describe, expect, it } from 'vitest';
import type { CodeAction, TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver-protocol';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { URI } from 'vscode-uri';
import { EditorClient, fullCapabilities } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

let client: EditorClient;

const capabilities = {
  ...fullCapabilities,
  workspace: {
    ...fullCapabilities.workspace,
    workspaceEdit: { documentChanges: true, resourceOperations: ['create' as const] },
    applyEdit: true,
  },
  textDocument: {
    ...fullCapabilities.textDocument,
    codeAction: { dataSupport: true, resolveSupport: { properties: ['edit'] } },
  },
};
const at = (line: number, character: number) => ({ line, character });

async function actions(uri: string, only: string, start = at(0, 0), end = start): Promise<CodeAction[]> {
  return client.ask('textDocument/codeAction', uri, {
    range: { start, end },
    context: { diagnostics: [], only: [only] },
  });
}

function applied(text: string, change: unknown): string {
  return TextDocument.applyEdits(
    TextDocument.create('', '', 1, text),
    (change as TextDocumentEdit).edits as never,
  );
}

describe('refactorings', () => {
  const text = '<group>\n<region> key=60 pan=1\n<region> key=61 pan=1\n';

  it('are offered without their change, which is answered when one is chosen', async () => {
    client = await EditorClient.start(bundle, { folder, capabilities });
    const uri = await client.open('a.sfz', text);
    const found = (await actions(uri, 'refactor')).find(({ title }) => /pan/.test(title)) as CodeAction;
    expect(found.edit).toBeUndefined();
    const { edit } = await client.connection.sendRequest<CodeAction>('codeAction/resolve', found);
    expect(applied(text, edit?.documentChanges?.[0])).toBe(
      '<group> pan=1\n<region> key=60\n<region> key=61\n',
    );
  });

  it('come with their change for a client that cannot ask for it', async () => {
    client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('a.sfz', text);
    const found = await actions(uri, 'refactor.rewrite');
    expect(found.length).toBeGreaterThan(0);
    expect(found.every(({ edit }) => edit !== undefined)).toBe(true);
  });

  it('have no change for a text that is another by now', async () => {
    client = await EditorClient.start(bundle, { folder, capabilities });
    const uri = await client.open('a.sfz', text);
    const [found] = await actions(uri, 'refactor');
    await client.change(uri, 2, { text: `\n${text}` });
    expect(
      (await client.connection.sendRequest<CodeAction>('codeAction/resolve', found)).edit,
    ).toBeUndefined();
  });

  it('make a file for regions that are moved out', async () => {
    client = await EditorClient.start(bundle, { folder, capabilities });
    const uri = await client.open('a.sfz', text);
    const found = await actions(uri, 'refactor.extract', at(1, 0), at(1, 22));
    const chosen = found.find(({ title }) => /included file/.test(title)) as CodeAction;
    const { edit } = await client.connection.sendRequest<CodeAction>('codeAction/resolve', chosen);
    const [create, fill, change] = edit?.documentChanges ?? [];
    expect(create).toMatchObject({ kind: 'create', uri: client.uri('a-regions.sfz') });
    expect(applied('', fill)).toBe('<region> key=60 pan=1\n');
    expect(applied(text, change)).toBe('<group>\n#include "a-regions.sfz"\n<region> key=61 pan=1\n');
  });
});

describe('all safe fixes', () => {
  it('of a document are one action', async () => {
    client = await EditorClient.start(bundle, { folder, capabilities });
    const text = '<region> loopmode=no_loop loopstart=1 sample=*sine\n<region> loopend=5 sample=*saw\n';
    const uri = await client.open('a.sfz', text);
    const [all] = await actions(uri, 'source.fixAll');
    expect(all?.kind).toBe('source.fixAll.zonewright');
    expect(applied(text, all?.edit?.documentChanges?.[0])).toBe(
      '<region> loop_mode=no_loop loop_start=1 sample=*sine\n<region> loop_end=5 sample=*saw\n',
    );
  });

  it('of a folder are made in open and closed instruments and their parts', async () => {
    await writeFile(`${folder}/closed.sfz`, '#include "part.sfz"\n<region> loopmode=no_loop sample=*sine\n');
    await writeFile(`${folder}/part.sfz`, '<region> loopstart=1 loop_mode=loop_continuous sample=*saw\n');
    await writeFile(
      `${folder}/x.instrument.xml`,
      '<instrument><region loopmode="no_loop" sample="*sine"/></instrument>',
    );
    await writeFile(`${folder}/sound.sfz`, '<region> sample=*sine\n');
    await writeFile(`${folder}/open.sfz`, 'what was saved before');
    client = await EditorClient.start(bundle, { folder, capabilities });
    const asked: WorkspaceEdit[] = [];
    client.connection.onRequest('workspace/applyEdit', ({ edit }: { edit: WorkspaceEdit }) => {
      asked.push(edit);
      return { applied: true };
    });
    const uri = await client.open('open.sfz', '<region> loopend=5 sample=*sine\n');
    const command = { command: 'zonewright.fixAllInFolder', arguments: [] };
    expect(await client.connection.sendRequest('workspace/executeCommand', command)).toEqual({
      fixed: 4,
      files: 4,
      left: 0,
    });
    const changes = asked[0]?.documentChanges as TextDocumentEdit[];
    const after: Record<string, string> = {};
    for (const change of changes) {
      const path = URI.parse(change.textDocument.uri).fsPath;
      const name = path.slice(folder.length + 1);
      const before = name === 'open.sfz' ? '<region> loopend=5 sample=*sine\n' : await readFile(path, 'utf8');
      after[name] = applied(before, change);
    }
    expect(after).toEqual({
      'closed.sfz': '#include "part.sfz"\n<region> loop_mode=no_loop sample=*sine\n',
      'open.sfz': '<region> loop_end=5 sample=*sine\n',
      'part.sfz': '<region> loop_start=1 loop_mode=loop_continuous sample=*saw\n',
      'x.instrument.xml': '<instrument><region loop_mode="no_loop" sample="*sine"/></instrument>',
    });
    expect(changes.find(({ textDocument }) => textDocument.uri === uri)?.textDocument.version).toBe(1);
    await client.until(() => client.shown.length > 0);
    expect(client.shown).toEqual(['4 findings fixed in 4 files.']);
  });

  it('of one kind are made everywhere in a file, in its own style', async () => {
    client = await EditorClient.start(bundle, { folder, capabilities });
    const text = [
      '<region> sample=*sine lokey=c4 hikey=e4 pitch_keycenter=d4',
      '<region> sample=*saw lokey=d4 hikey=g4 pitch_keycenter=f4',
      '<region> sample=*sine key=f#5',
      '<region> sample=*saw lokey=g5 hikey=b5',
      '<region> sample=*sine lokey=a#5 hikey=c6\n',
    ].join('\n');
    const uri = await client.open('a.sfz', text);
    const found = await actions(uri, 'quickfix', at(1, 2));
    const titles = found.map(({ title }) => title);
    expect(titles).toContain('Set hikey=c#4 for "*sine"');
    const all = found.find(
      ({ title }) => title === 'End the lower range before the upper one, everywhere in this file',
    );
    const resolved = await client.connection.sendRequest<CodeAction>('codeAction/resolve', all);
    expect(applied(text, resolved.edit?.documentChanges?.[0])).toBe(
      text.replace('hikey=e4', 'hikey=c#4').replace('hikey=b5', 'hikey=a5'),
    );
    const inFolder = found.find(
      ({ title }) => title.startsWith('End the lower range') && title.endsWith('folder …'),
    );
    expect(inFolder?.command).toMatchObject({
      command: 'zonewright.fixAllInFolder',
      arguments: [null, { code: 'range-overlap', kind: 'End the lower range before the upper one' }],
    });
  });

  it('of a folder that needs none are told', async () => {
    client = await EditorClient.start(bundle, { folder, capabilities });
    const command = { command: 'zonewright.fixAllInFolder', arguments: [URI.file(folder).toJSON()] };
    expect(await client.connection.sendRequest('workspace/executeCommand', command)).toEqual({
      fixed: 0,
      files: 0,
      left: 0,
    });
    await client.until(() => client.shown.length > 0);
    expect(client.shown[0]).toMatch(/no finding with a safe fix/);
  });
});
