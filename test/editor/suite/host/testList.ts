/**
 * The tests that run inside the extension host. How to write one:
 *
 * - Put it in a file of this folder named after what it tests, and import that file in `index.ts`. At the top level,
 *   call `test(name, body)` where the editor's own interface (`vscode`) is enough, and
 *   `workbenchTest(name, body)` where the test must see or touch the screen; its body gets a `Workbench`
 *   (screenshots, keys, the mouse, elements of the workbench and inside web views). A desktop run has
 *   no such screen and skips the latter.
 * - Compare with `node:assert/strict`. What the editor does in its own time is awaited with `until` (`until.ts`),
 *   never with a fixed pause.
 * - The folder that is open is a fresh copy of `samples-demo`; `openFile` and the like are in `documents.ts`. Before
 *   each test every editor is closed, changed documents are reverted and the colour theme is the dark one. Files
 *   written to disk stay, so a test that writes uses names of its own.
 * - Names are unique: `--only TEXT` chooses the tests whose name holds TEXT.
 */
import type { Workbench } from './workbench';

/** What may be set for one test: its time limit (60 s where nothing is said). */
export interface TestOptions {
  readonly timeoutSeconds?: number;
}

/** A test as registered; `needsScreen` says that its body drives the workbench's screen. */
export interface EditorTest {
  readonly name: string;
  readonly needsScreen: boolean;
  readonly timeoutSeconds: number;
  readonly body: (workbench: Workbench) => Promise<void>;
}

const tests: EditorTest[] = [];

/** Registers a test that needs only the extension host. Throws when the name is taken. */
export function test(name: string, body: () => Promise<void>, options: TestOptions = {}): void {
  register({ name, needsScreen: false, timeoutSeconds: options.timeoutSeconds ?? 60, body });
}

/** Registers a test that sees and touches the screen. Throws when the name is taken. */
export function workbenchTest(
  name: string,
  body: (workbench: Workbench) => Promise<void>,
  options: TestOptions = {},
): void {
  register({ name, needsScreen: true, timeoutSeconds: options.timeoutSeconds ?? 60, body });
}

/** The tests registered so far, in order. */
export function registeredTests(): readonly EditorTest[] {
  return tests;
}

function register(entry: EditorTest): void {
  if (tests.some((other) => other.name === entry.name))
    throw new Error(`Two tests are named “${entry.name}”.`);
  tests.push(entry);
}
