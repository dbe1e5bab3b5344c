import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { test, workbenchTest } from './host/testList';
import { until } from './host/until';

test('the extension is there and starts', async () => {
  const extension = vscode.extensions.all.find((candidate) => candidate.packageJSON.name === 'zonewright');
  assert.ok(extension, 'the editor lists no extension named zonewright');
  await extension.activate();
  assert.equal(extension.isActive, true);
});

workbenchTest('the walkthrough opens an instrument to try things out on', async (workbench) => {
  const [extension] = vscode.extensions.all.filter(({ packageJSON }) => packageJSON.name === 'zonewright');
  await vscode.commands.executeCommand('workbench.action.openWalkthrough', `${extension?.id}#start`);
  for (const [theme, shown] of [
    ['highContrast', 'hc'],
    ['light', 'light'],
    ['dark', 'dark'],
  ] as const) {
    await workbench.useColourTheme(theme);
    for (const [title, name] of [
      ['Paste a zone table', 'paste'],
      ['Fix what the checks find', 'findings'],
      ['See the keyboard', 'map'],
      ['Open an instrument', 'open'],
    ]) {
      await workbench.click({ selector: `h3.step-title >> text=${title}` });
      const picture = `.gettingStartedContainer img[srcset*="walkthrough-${name}-${shown}"]`;
      await workbench.waitFor({ selector: picture });
      await workbench.screenshot(`walkthrough-${name}-${shown}`);
    }
  }
  await workbench.click({
    selector: '.gettingStartedContainer >> text=Open the small instrument',
  });
  const { document } = await until('the instrument', () => {
    const active = vscode.window.activeTextEditor;
    return active?.document.uri.path.endsWith('/first-bars.sfz') ? active : undefined;
  });
  const codes = () => vscode.languages.getDiagnostics(document.uri).map(({ code }) => code);
  await until('what is to be mended', () =>
    ['opcode-value', 'range-overlap', 'sample-missing'].every((code) => codes().includes(code)),
  );
  await workbench.screenshot('first-bars');
});
