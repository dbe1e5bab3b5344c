import { cp, mkdir, rename, rm, writeFile } from 'node:fs/promises';
import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import type { CodeAction, TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver-protocol';
import { CodeActionTriggerKind } from 'vscode-languageserver-protocol';
import { EditorClient, placed } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';
import { waveBytes } from './host/waveBytes';

useServerPlaces();

let client: EditorClient;

const codes = (name: string) => client.sent.get(client.uri(name))?.diagnostics.map(({ code }) => code);

/** Has the server told that files changed, as an editor does. */
const tellChanged = (...names: string[]) =>
  client.connection.sendNotification('workspace/didChangeWatchedFiles', {
    changes: names.map((name) => ({ uri: client.uri(name), type: 2 })),
  });

const checkFolder = () =>
  client.connection.sendRequest('workspace/executeCommand', {
    command: 'zonewright.checkFolder',
    arguments: [],
  });

describe('checking all instruments of a folder', () => {
  it('tells the findings of closed files, and keeps them up to date', async () => {
    await writeFile(`${folder}/whole.sfz`, '#include "part.sfz"\n<region> key=61 sample=*sine\n');
    await writeFile(`${folder}/part.sfz`, '<region> key=60 sample=a.wav\n');
    await writeFile(`${folder}/good.sfz`, '<region> sample=*sine\n');
    client = await EditorClient.start(bundle, { folder });
    expect(await checkFolder()).toEqual({ files: 3, filesWithFindings: 1, findings: 1 });
    expect(client.sent.get(client.uri('part.sfz'))?.diagnostics.map(placed)).toEqual([
      'sample-missing 0:23-0:28',
    ]);
    expect(codes('good.sfz')).toEqual([]);
    await client.until(() => client.shown.length > 0);
    expect(client.shown).toEqual([
      '3 files of instruments checked. 1 finding in 1 file; the list of problems shows them.',
    ]);

    await writeFile(`${folder}/a.wav`, waveBytes(10));
    await tellChanged('a.wav');
    await client.until(() => codes('part.sfz')?.length === 0);
    await writeFile(`${folder}/good.sfz`, '<region> sample=none.wav\n');
    await tellChanged('good.sfz');
    await client.until(() => codes('good.sfz')?.[0] === 'sample-missing');
    await writeFile(`${folder}/new.sfz`, '<region> sample=none.wav\n');
    await tellChanged('new.sfz');
    await client.until(() => codes('new.sfz')?.[0] === 'sample-missing');
    await rm(`${folder}/new.sfz`);
    await tellChanged('new.sfz');
    await client.until(() => codes('new.sfz')?.length === 0);
  });

  it('leaves open documents to other ways of telling, and tells theirs when they are closed', async () => {
    const text = '<region> sample=none.wav\n';
    await writeFile(`${folder}/a.sfz`, text);
    client = await EditorClient.start(bundle, { folder });
    await checkFolder();
    expect(codes('a.sfz')).toEqual(['sample-missing']);
    const uri = await client.open('a.sfz', text);
    await client.until(() => codes('a.sfz')?.length === 0);
    expect(await client.findings(uri)).toEqual(['sample-missing 0:16-0:24']);
    await client.connection.sendNotification('textDocument/didClose', { textDocument: { uri } });
    await client.until(() => codes('a.sfz')?.[0] === 'sample-missing');
  });
});

/** How many further documents were opened. */
let opened = 0;

describe('folders that change while nobody tells', () => {
  const text = '<region> sample=Samples/a.wav\n';
  const lookAgain = () => client.connection.sendNotification('zonewright/lookAgain');

  /** Waits until the findings are as expected; a test that waits too long has failed. */
  const foundIn = async (uri: string, expected: readonly string[], after?: () => Promise<unknown>) => {
    let seen = client.refreshes;
    await after?.();
    while ((await client.findings(uri)).join() !== expected.join()) {
      await client.until(() => client.refreshes > seen);
      seen = client.refreshes;
    }
  };

  it.each([
    ['a person comes back to the editor', () => lookAgain()],
    [
      'the document is saved',
      (uri: string) => client.connection.sendNotification('textDocument/didSave', { textDocument: { uri } }),
    ],
    ['another document is opened', () => client.open(`${++opened}.sfz`, '<region> sample=*sine')],
    [
      'they are checked again',
      () => client.connection.sendRequest('workspace/executeCommand', { command: 'zonewright.checkAgain' }),
    ],
  ] as [string, (uri: string) => Promise<unknown>][])('are noticed when %s', async (_, look) => {
    await mkdir(`${folder}/Samples`);
    await writeFile(`${folder}/Samples/a.wav`, waveBytes(10));
    client = await EditorClient.start(bundle, { folder });
    const uri = await client.open('a.sfz', text);
    expect(await client.findings(uri)).toEqual([]);
    await rename(`${folder}/Samples`, `${folder}/Other`);
    await foundIn(uri, ['sample-missing 0:16-0:29'], () => look(uri));
    await cp(`${folder}/Other`, `${folder}/Samples`, { recursive: true });
    await foundIn(uri, [], () => look(uri));
  });

  it('are noticed when a file came and went before its coming was told', async () => {
    await mkdir(`${folder}/Samples`);
    client = EditorClient.connect(bundle, { folder });
    // Nothing is looked at again because watching has begun.
    client.registers = new Promise(() => {});
    await client.initialize();
    const uri = await client.open('a.sfz', text);
    expect(await client.findings(uri)).toEqual(['sample-missing 0:16-0:29']);
    // What opening the document has looked at is over by then.
    await setTimeout(200);
    await writeFile(`${folder}/Samples/a.wav`, waveBytes(10));
    // Told of another file, the server lists the folder anew while the first is there, of which nothing is ever told.
    await foundIn(uri, [], () => tellChanged('Samples/b.wav'));
    await rm(`${folder}/Samples/a.wav`);
    await foundIn(uri, ['sample-missing 0:16-0:29']);
  });

  it('are noticed when they changed before watching began', async () => {
    await mkdir(`${folder}/Samples`);
    await writeFile(`${folder}/Samples/a.wav`, waveBytes(10));
    let begin = () => {};
    client = EditorClient.connect(bundle, { folder });
    client.registers = new Promise((resolve) => {
      begin = resolve;
    });
    await client.initialize();
    const uri = await client.open('a.sfz', text);
    expect(await client.findings(uri)).toEqual([]);
    // What opening the document has looked at is over by then.
    await setTimeout(200);
    await rename(`${folder}/Samples`, `${folder}/Other`);
    begin();
    await foundIn(uri, ['sample-missing 0:16-0:29']);
  });
});

describe('a folder of samples that lies elsewhere', () => {
  it('is offered, or asked for, and the paths of all instruments follow', async () => {
    const text =
      '<control> default_path=Samples/\n<region> key=60 sample=a.wav\n<region> key=61 sample=b.wav\n';
    await mkdir(`${folder}/Recorded`);
    for (const name of ['a', 'b']) await writeFile(`${folder}/Recorded/${name}.wav`, waveBytes(10));
    await writeFile(`${folder}/other.sfz`, '<region> sample=Samples/a.wav\n');
    client = await EditorClient.start(bundle, {
      folder,
      options: { locateFolderCommand: 'test.locateFolder' },
    });
    const asked: WorkspaceEdit[] = [];
    client.connection.onRequest('workspace/applyEdit', ({ edit }: { edit: WorkspaceEdit }) => {
      asked.push(edit);
      return { applied: true };
    });
    const uri = await client.open('a.sfz', text);
    const range = { start: { line: 1, character: 24 }, end: { line: 1, character: 24 } };
    const actions = await client.ask<CodeAction[]>('textDocument/codeAction', uri, {
      range,
      context: { diagnostics: [], only: ['quickfix'] },
    });
    const gone = client.uri('Samples');
    expect(actions.map(({ title }) => title)).toEqual([
      'Use the folder "Recorded", which holds 2 of 2 samples',
      'Locate the folder …',
    ]);
    // What shows by itself that there are fixes looks no further than beside.
    const ofMoved = async (triggerKind: CodeActionTriggerKind) => {
      const found = await client.ask<CodeAction[]>('textDocument/codeAction', moved, {
        range,
        context: { diagnostics: [], only: ['quickfix'], triggerKind },
      });
      return found.map(({ title }) => title);
    };
    const moved = await client.open('far/away/b.sfz', text);
    expect(await ofMoved(CodeActionTriggerKind.Automatic)).toEqual(['Locate the folder …']);
    expect(await ofMoved(CodeActionTriggerKind.Invoked)).toEqual([
      'Use the folder "../../Recorded", which holds 2 of 2 samples',
      'Locate the folder …',
    ]);
    expect(actions[1]?.command).toMatchObject({ command: 'test.locateFolder', arguments: [gone] });
    const { command } = actions[0] as CodeAction;
    expect(command?.arguments).toEqual([gone, client.uri('Recorded')]);
    await client.connection.sendRequest('workspace/executeCommand', command);
    const changed = ((asked[0]?.documentChanges ?? []) as TextDocumentEdit[]).map(
      ({ textDocument, edits }) => [textDocument.uri, edits.map((edit) => 'newText' in edit && edit.newText)],
    );
    expect(changed).toEqual([
      [uri, ['Recorded/']],
      [client.uri('other.sfz'), ['Recorded/a.wav']],
    ]);
  });
});
