import { appendFileSync } from 'node:fs';
import * as vscode from 'vscode';
import { workbenchTest } from '../suite/host/testList';
import { until } from '../suite/host/until';

workbenchTest('the editor tells how long the extension took to start', async (workbench) => {
  await vscode.extensions.getExtension('zonewright.zonewright')?.activate();
  await vscode.commands.executeCommand('workbench.action.showRuntimeExtensions');
  const row = '.runtime-extensions-editor .monaco-list-row:has-text("Zonewright") .activation-time';
  const told = await until('the time', async () => {
    const text = await workbench.text({ selector: row });
    return /\d+\s*ms/.test(text) && text;
  });
  await workbench.screenshot('task-activation');
  const file = process.env.ZONEWRIGHT_EDITOR_TASKS;
  if (file) appendFileSync(file, `${JSON.stringify({ activation: told })}\n`);
});
