import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { openText } from '../documents';
import { workbenchTest } from './testList';
import { until } from './until';
import type { ColourTheme } from './workbench';

workbenchTest('what is typed on the screen reaches a document', async (workbench) => {
  const { document } = await openText('plaintext', '');
  await workbench.waitFor({ selector: '.monaco-editor.focused' });
  await workbench.type('one word');
  await until('the typed text', () => document.getText() === 'one word');
});

workbenchTest('the screen takes light, dark and high contrast themes', async (workbench) => {
  const background = () =>
    workbench.evaluate<string>(
      'getComputedStyle(document.querySelector(".monaco-workbench .part.statusbar")).backgroundColor',
    );
  const seen = new Set<string>();
  const choices: ColourTheme[] = ['light', 'dark', 'highContrast'];
  for (const choice of choices) {
    await workbench.useColourTheme(choice);
    seen.add(await background());
  }
  assert.equal(seen.size, choices.length, [...seen].join(' '));
  assert.equal(vscode.window.activeColorTheme.kind, vscode.ColorThemeKind.HighContrast);
});
