import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { test } from './testList';

test('the extension is there and starts', async () => {
  const extension = vscode.extensions.all.find((candidate) => candidate.packageJSON.name === 'zonewright');
  assert.ok(extension, 'the editor lists no extension named zonewright');
  await extension.activate();
  assert.equal(extension.isActive, true);
});
