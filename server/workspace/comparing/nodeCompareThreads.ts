import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import type { NoteMeasure } from '../../comparison/compareInstruments';
import type { MeasuredNote, MeasureOptions } from '../../comparison/measureNotes';
import type { PlayedNote } from '../../playing/sweep/playedNote';
import type { CompareAnswer, CompareMessage, SentSide } from './compareThread';

/** Measures notes in threads until it is closed. */
export interface CompareThreads extends NoteMeasure {
  close(): Promise<void>;
}

/** What threads are sent at first. */
export interface ComparedSides {
  a: SentSide;
  b: SentSide;
  options: MeasureOptions;
}

interface Order {
  notes: readonly PlayedNote[];
  finish(measured: MeasuredNote): void;
  fail(reason: Error): void;
}

/**
 * Measures notes of two sides in worker threads where the bundle that they run stands in a folder; `undefined` where it does
 * not, as when the program runs from its source. A thread that breaks down fails what it was at.
 */
export function nodeCompareThreads(
  folder: string,
  count: number,
  { a, b, options }: ComparedSides,
): CompareThreads | undefined {
  const bundle = `${folder}/compareWorker.js`;
  if (!existsSync(bundle)) return undefined;
  const threads: CompareThread[] = [];
  const waiting: ((thread: CompareThread) => void)[] = [];
  const start = (): CompareThread => {
    const thread = new CompareThread(bundle);
    thread.send({ kind: 'sides', a, b, options });
    threads.push(thread);
    return thread;
  };
  /** A thread that is taken with the answer, so that nobody else gets it. */
  const free = async (): Promise<CompareThread> => {
    const idle = threads.find(({ isTaken }) => !isTaken) ?? (threads.length < count ? start() : undefined);
    const thread = idle ?? (await new Promise<CompareThread>((resolve) => waiting.push(resolve)));
    thread.isTaken = true;
    return thread;
  };
  const giveBack = (thread: CompareThread) => {
    if (thread.isBroken) threads.splice(threads.indexOf(thread), 1);
    const next = waiting.shift();
    if (next) next(thread.isBroken ? start() : thread);
    else thread.isTaken = false;
  };
  return {
    atOnce: count,
    async measure(notes) {
      const thread = await free();
      try {
        return await thread.measure(notes);
      } finally {
        giveBack(thread);
      }
    },
    async close() {
      await Promise.all(threads.map((thread) => thread.close()));
    },
  };
}

class CompareThread {
  isBroken = false;
  isTaken = false;
  readonly #worker: Worker;
  #order: Order | undefined;

  constructor(bundle: string) {
    this.#worker = new Worker(bundle);
    this.#worker.on('message', (answer: CompareAnswer) => {
      const order = this.#order;
      this.#order = undefined;
      if ('measured' in answer) order?.finish(answer.measured);
      else order?.fail(new Error(answer.reason));
    });
    this.#worker.on('error', (error) => this.#break(error));
    this.#worker.on('exit', () => this.#break(new Error('a thread ended before it answered')));
  }

  send(message: CompareMessage): void {
    this.#worker.postMessage(message);
  }

  measure(notes: readonly PlayedNote[]): Promise<MeasuredNote> {
    return new Promise((finish, fail) => {
      this.#order = { notes, finish, fail };
      this.send({ kind: 'measure', id: 0, notes });
    });
  }

  async close(): Promise<void> {
    await this.#worker.terminate();
  }

  #break(error: unknown): void {
    this.isBroken = true;
    const order = this.#order;
    this.#order = undefined;
    order?.fail(error instanceof Error ? error : new Error(String(error)));
  }
}
