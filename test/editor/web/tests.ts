// What the extension host of an editor runs that a browser hosts.
import * as vscode from 'vscode';
import { test } from '../suite/host/testList';
import { until } from '../suite/host/until';

const [folder] = vscode.workspace.workspaceFolders ?? [];
const place = (name: string) => vscode.Uri.joinPath(folder.uri, name);
const instrument = place('a.sfz');

async function open(): Promise<void> {
  await vscode.window.showTextDocument(instrument);
}

const findings = () =>
  vscode.languages
    .getDiagnostics(instrument)
    .map(({ code, range }) => `${typeof code === 'object' ? code.value : code}, line ${range.start.line}`);

function same(actual: unknown, expected: unknown): void {
  const [one, other] = [JSON.stringify(actual), JSON.stringify(expected)];
  if (one !== other) throw new Error(`${one} is not ${other}`);
}

test('the extension starts in a web worker', async () => {
  same(vscode.env.uiKind, vscode.UIKind.Web);
  const extension = vscode.extensions.all.find(({ packageJSON }) => packageJSON.name === 'zonewright');
  await extension?.activate();
  same(extension?.isActive, true);
  same(extension?.extensionUri.scheme, 'http');
});

test('findings come from text and samples that the editor has', async () => {
  await open();
  await until('the findings', () => {
    const all = findings();
    return all.includes('loop-past-end, line 1') && all.includes('sample-missing, line 2');
  });
});

test('samples are measured', async () => {
  await open();
  await until('the finding of a measure', () => findings().includes('loop-seam, line 0'));
  const hovers = await vscode.commands.executeCommand<vscode.Hover[]>(
    'vscode.executeHoverProvider',
    instrument,
    new vscode.Position(0, 20),
  );
  const text = hovers.flatMap(({ contents }) => contents.map((one) => (one as vscode.MarkdownString).value));
  // 1200 · log2(441 / 440) = 3.93 cents above A4 (ISO 16).
  if (!/Sounds at 69 \(A4\), \+4 cents \(441\.0 Hz\)/.test(text.join('\n'))) throw new Error(text.join('\n'));
});

test('a definition leads to a file of the editor', async () => {
  const found = await vscode.commands.executeCommand<(vscode.Location | vscode.LocationLink)[]>(
    'vscode.executeDefinitionProvider',
    instrument,
    new vscode.Position(0, 20),
  );
  const uris = found.map((one) => ('uri' in one ? one.uri : one.targetUri).toString());
  same(uris, [place('Samples/a.wav').toString()]);
});

test('a file that comes is found', async () => {
  await open();
  const content = await vscode.workspace.fs.readFile(place('Samples/a.wav'));
  await vscode.workspace.fs.writeFile(place('Samples/gone.wav'), content);
  await until('the finding to go', () => !findings().includes('sample-missing, line 2'));
});

test('an instrument is converted and saved beside the one that it was made from', async () => {
  await open();
  await vscode.commands.executeCommand('zonewright.convertToXml');
  const made = await until('the converted text', () =>
    vscode.workspace.textDocuments.find((one) => one.languageId === 'instrument-xml' && one.getText() !== ''),
  );
  await made.save();
  const saved = await until('the saved file', async () =>
    vscode.workspace.fs.readFile(place('a.instrument.xml')),
  );
  same(new TextDecoder().decode(saved).includes('<region'), true);
});
