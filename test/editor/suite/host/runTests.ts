import { appendFileSync } from 'node:fs';
import * as vscode from 'vscode';
import { closeEverything } from '../documents';
import type { EditorTest } from './testList';
import { Workbench } from './workbench';

/** Dialogs and the focus of a busy screen may be late. A fault fails each time; what failed once is told. */
const mostTries = 3;
const restMilliseconds = 2000;

/** A line of the results file, which the runner reads as it grows. */
type ResultLine =
  | { kind: 'begin'; name: string; timeoutSeconds: number }
  | { kind: 'passed'; name: string; milliseconds: number }
  | { kind: 'failed'; name: string; message: string }
  | { kind: 'skipped'; name: string; message: string }
  | { kind: 'note'; message: string }
  | { kind: 'end' };

/**
 * Runs tests one after another and writes what came of each into the file that ZONEWRIGHT_EDITOR_RESULTS names.
 * ZONEWRIGHT_EDITOR_CONTROL is the address of the control server, empty where the screen is out of reach;
 * ZONEWRIGHT_EDITOR_ONLY chooses tests by a part of their name. A test that fails is tried
 * again, and that is told. A failing screen test leaves a screenshot.
 */
export async function runTests(tests: readonly EditorTest[]): Promise<void> {
  const address = process.env.ZONEWRIGHT_EDITOR_CONTROL;
  const workbench = address ? new Workbench(address) : undefined;
  const only = process.env.ZONEWRIGHT_EDITOR_ONLY ?? '';
  try {
    report({ kind: 'note', message: `Editor ${vscode.version}, Node ${process.versions.node}` });
    for (const test of tests) {
      if (test.name.includes(only)) await runTest(test, workbench);
    }
  } finally {
    report({ kind: 'end' });
  }
}

async function runTest(test: EditorTest, workbench: Workbench | undefined): Promise<void> {
  const { name } = test;
  if (test.needsScreen && workbench === undefined) {
    report({ kind: 'skipped', name, message: 'needs the screen, which only the browser run can reach' });
    return;
  }
  let failure: string | undefined;
  for (let tried = 1; tried <= mostTries; tried++) {
    failure = await attempt(test, workbench);
    if (failure === undefined) return;
    if (tried === mostTries) break;
    report({ kind: 'note', message: `failed, and is tried again: ${name}\n${failure}` });
    // The editor tells of files that the try wrote or took away a moment later, and the next one writes the same.
    await new Promise((done) => setTimeout(done, restMilliseconds));
  }
  report({ kind: 'failed', name, message: failure ?? '' });
}

/** Runs a test and reports that it passed; answers what failed where it did not, with a screenshot left. */
async function attempt(
  { name, timeoutSeconds, body }: EditorTest,
  workbench: Workbench | undefined,
): Promise<string | undefined> {
  report({ kind: 'begin', name, timeoutSeconds });
  const started = performance.now();
  try {
    await withTimeLimit(timeoutSeconds, async () => {
      await closeEverything();
      await workbench?.useColourTheme('dark');
      // A test that does not need the screen never touches what stands in for it.
      await body(workbench ?? new Workbench('http://127.0.0.1:0'));
    });
    report({ kind: 'passed', name, milliseconds: performance.now() - started });
    return undefined;
  } catch (error) {
    await workbench?.screenshot(`failed-${name}`).catch(() => undefined);
    return error instanceof Error ? (error.stack ?? error.message) : String(error);
  }
}

async function withTimeLimit(seconds: number, body: () => Promise<void>): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const limit = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new Error(`Not done after ${seconds} s`)), seconds * 1000);
  });
  try {
    await Promise.race([body(), limit]);
  } finally {
    clearTimeout(timer);
  }
}

function report(line: ResultLine): void {
  const file = process.env.ZONEWRIGHT_EDITOR_RESULTS;
  if (file) appendFileSync(file, `${JSON.stringify(line)}\n`);
  else console.log(JSON.stringify(line));
}
