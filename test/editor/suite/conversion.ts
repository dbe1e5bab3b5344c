import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { isFilled, openFile, shownPage, writeWorkspaceFile } from './documents';
import { test, workbenchTest } from './host/testList';
import { until } from './host/until';

const press = {
  name: 'cider press',
  levels: [
    { element: 'press', is: 'instrument', parameters: [] },
    {
      element: 'apple',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@peel', form: { kind: 'path' } },
        { parameter: 'lokey', at: '@lower-branch', form: { kind: 'key', written: 'number' } },
        { parameter: 'hikey', at: '@upper-branch', form: { kind: 'key', written: 'number' } },
      ],
    },
  ],
};

const sfz = `#define $TOP 61
<region> sample=*sine lokey=59 hikey=$TOP 1st=2
<region> sample=*sine lokey=62 hikey=63 cutoff=900
`;

/** The document that a conversion opens. */
async function opened(name: string): Promise<vscode.TextDocument> {
  return until(`${name}`, () =>
    vscode.workspace.textDocuments.find(
      (one) => isFilled(one) && one.isUntitled && one.uri.path.endsWith(`/${name}`),
    ),
  );
}

const marks = (document: vscode.TextDocument, code: string) =>
  until(`a note that something was ${code}`, () => {
    const found = vscode.languages.getDiagnostics(document.uri).filter((one) => one.code === code);
    return found.length > 0 && found;
  });

test('an instrument is converted beside its text, unsaved, with the notes as findings on the new text', async () => {
  await writeWorkspaceFile('conversion/there.sfz', sfz);
  await openFile('conversion/there.sfz');
  await vscode.commands.executeCommand('zonewright.convertToXml');
  const document = await opened('there.instrument.xml');
  assert.equal(document.languageId, 'instrument-xml');
  assert.equal(document.isDirty, true);
  assert.match(document.getText(), /<define name="TOP" value="61"\/>/);
  assert.match(document.getText(), /hikey="\$TOP"\/>/);
  const [lost] = await marks(document, 'dropped');
  assert.equal(lost?.source, 'zonewright');
  assert.equal(document.getText(lost?.range), '<region');
  await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
  await until('the findings to go', () => vscode.languages.getDiagnostics(document.uri).length === 0);
});

workbenchTest(
  'an instrument is converted to a vocabulary that is picked, and the notes are a click away',
  async (workbench) => {
    await vscode.commands.executeCommand('notifications.clearAll');
    await writeWorkspaceFile('conversion/press.vocabulary.json', JSON.stringify(press));
    await writeWorkspaceFile('conversion/press.sfz', sfz);
    await openFile('conversion/press.sfz');
    const done = vscode.commands.executeCommand('zonewright.convertToVocabulary');
    await workbench.waitFor({ selector: '.quick-input-list >> text=/press.vocabulary.json/' });
    await workbench.click({ selector: '.quick-input-list >> text=/press.vocabulary.json/' });
    await done;
    const document = await opened('press.xml');
    assert.match(
      document.getText(),
      /<press>\n {2}<apple peel="\*sine" lower-branch="59" upper-branch="61"\/>/,
    );
    assert.match((await marks(document, 'dropped')).map(({ message }) => message).join(), /cutoff/);
    await workbench.waitFor({ selector: '.notifications-toasts >> text=Show notes' });
    await workbench.screenshot('conversion');
    await workbench.click({ selector: '.notifications-toasts >> text=Show notes' });
    const page = await shownPage();
    assert.match(page.getText(), /^# Conversion notes for press\.sfz\n(?:.*\n)*- Left out: 2\n/);
  },
);

test('what belongs beside a document shares one group of editors', async () => {
  await writeWorkspaceFile('conversion/beside.sfz', sfz);
  const { document } = await openFile('conversion/beside.sfz');
  const groups = () => vscode.window.tabGroups.all.map(({ tabs }) => tabs.length);
  const first = vscode.ViewColumn.One;
  for (const command of ['convertToXml', 'sampleReportTable', 'convertToXml']) {
    const before = groups().reduce((sum, count) => sum + count, 0);
    await vscode.window.showTextDocument(document, { viewColumn: first });
    await vscode.commands.executeCommand(`zonewright.${command}`);
    await until(`what ${command} opens`, () => groups().reduce((sum, count) => sum + count, 0) > before);
  }
  await until('three beside the one', () => {
    assert.deepEqual(groups(), [1, 3]);
    return true;
  });
});
