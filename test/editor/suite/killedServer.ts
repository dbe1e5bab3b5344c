import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import * as vscode from 'vscode';
import { openFile, writeWorkspaceFile } from './documents';
import { test } from './host/testList';
import { until } from './host/until';

/** The processes that run the language server for this extension host, by their numbers. */
function serverProcesses(): number[] {
  return readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .map(Number)
    .filter((number) => {
      try {
        const words = readFileSync(`/proc/${number}/cmdline`, 'utf8');
        const parent = Number(
          readFileSync(`/proc/${number}/stat`, 'utf8')
            .replace(/^.*\) \S+ /s, '')
            .split(' ')[0],
        );
        return parent === process.pid && /dist[\\/]server\.js/.test(words);
      } catch {
        return false;
      }
    });
}

if (process.platform === 'linux')
  test(
    'a server that is killed while it works comes back: findings return, and nothing typed is lost',
    async () => {
      const regions = Array.from(
        { length: 3000 },
        (_, at) => `<region> sample=*sine key=${at % 128} bend_up=${at}\n`,
      );
      await writeWorkspaceFile('killed/large.sfz', `${regions.join('')}`);
      const editor = await openFile('killed/large.sfz');
      const { document } = editor;
      await until('the server', () => serverProcesses().length === 1, 30);
      const [first] = serverProcesses();
      await editor.edit((edit) => edit.insert(new vscode.Position(0, 0), '<region> lokye=1\n'));
      // It is at work on the text that was just typed.
      process.kill(first, 'SIGKILL');
      await editor.edit((edit) => edit.insert(new vscode.Position(0, 0), '<region> hikye=2\n'));
      await until('another server', () => serverProcesses().some((one) => one !== first), 30);
      await editor.edit((edit) => edit.insert(new vscode.Position(0, 0), '<region> lovle=3\n'));
      assert.ok(document.getText().startsWith('<region> lovle=3\n<region> hikye=2\n<region> lokye=1\n'));
      const lines = await until(
        'the findings of all that was typed',
        () => {
          const unknown = vscode.languages
            .getDiagnostics(document.uri)
            .filter(({ code }) => code === 'opcode-unknown')
            .map(({ range }) => range.start.line);
          return unknown.length === 3 && unknown;
        },
        30,
      );
      assert.deepEqual(lines.sort(), [0, 1, 2]);
    },
    { timeoutSeconds: 120 },
  );
