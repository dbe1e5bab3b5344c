import { appendFileSync } from 'node:fs';
import { workbenchTest } from '../suite/host/testList';
import type { Workbench } from '../suite/host/workbench';
import type { Actions } from './person';
import { Person, secondsOf } from './person';

/** What a task came to; one line of JSON each in the file that ZONEWRIGHT_EDITOR_TASKS names. */
export interface TaskResult {
  title: string;
  actions: Actions;
  seconds: number;
  /** Without the extension, in an editor of plain text: an estimate. */
  byHand: Actions & { seconds: number; how: string };
}

/** A task of every day. */
export interface Task {
  title: string;
  /** How it goes in an editor of plain text, in a few words, with the actions that this takes. */
  byHand: Actions & { how: string };
  /** Makes files and opens what is open when the task begins. */
  prepare(workbench: Workbench): Promise<void>;
  /** What a person does, to what that person waits for. */
  carryOut(person: Person, workbench: Workbench): Promise<void>;
}

/** Registers a task; its end is kept as a picture. */
export function task({ title, byHand, prepare, carryOut }: Task): void {
  workbenchTest(
    title,
    async (workbench) => {
      await prepare(workbench);
      const person = new Person(workbench);
      const started = performance.now();
      await carryOut(person, workbench);
      const seconds = (performance.now() - started) / 1000;
      await workbench.screenshot(`task-${title}`);
      const result: TaskResult = {
        title,
        actions: person.actions,
        seconds,
        byHand: { ...byHand, seconds: secondsOf(byHand) },
      };
      const file = process.env.ZONEWRIGHT_EDITOR_TASKS;
      if (file) appendFileSync(file, `${JSON.stringify(result)}\n`);
    },
    { timeoutSeconds: 240 },
  );
}
