import type { MeasureOutcome } from './measureFile';
import type { MeasureRequest } from './measureRequest';
import type { Measurer } from './measurer';
import type { ThreadAnswer, ThreadMessage } from './measureThread';

/** A thread of the host that measures, as the pool speaks with it. */
export interface MeasureThread {
  send(message: ThreadMessage): void;
  /** Says whether an answer is waited for; an idle thread does not keep the program from ending. */
  setBusy(isBusy: boolean): void;
  /** Ends it at once. */
  end(): Promise<void>;
}

/** What a thread tells the pool. `ended` is told once, whether it was ended or broke down. */
export interface ThreadEvents {
  answered(answer: ThreadAnswer): void;
  ended(): void;
}

/** Starts a thread of the host; may throw. */
export type StartThread = (events: ThreadEvents) => MeasureThread;

interface Member {
  thread: MeasureThread;
  job?: { id: number; finish: (outcome: MeasureOutcome) => void };
}

/** Milliseconds without work after which threads are ended. */
const idleTime = 30_000;
/** Milliseconds that a thread is given to stop by itself. */
const stopTime = 2_000;

/**
 * Measures in threads of the host, one file each at a time. Threads are started when there is work for them and ended
 * when there was none for a while. One that breaks down costs the file that it was at; another takes its place.
 */
export class MeasurePool implements Measurer {
  readonly width: number;
  readonly #start: StartThread;
  readonly #members = new Set<Member>();
  readonly #waiting: (() => void)[] = [];
  #idle: ReturnType<typeof setTimeout> | undefined;
  #lastId = 0;
  #isClosed = false;

  constructor(start: StartThread, width: number) {
    this.#start = start;
    this.width = Math.max(1, width);
  }

  /** Threads that are there now. */
  get threads(): number {
    return this.#members.size;
  }

  async measure(
    path: string,
    requests: readonly MeasureRequest[],
    signal: AbortSignal,
  ): Promise<MeasureOutcome> {
    const member = await this.#freeMember();
    if (!member) return { kind: 'failed', reason: 'broken' };
    try {
      if (signal.aborted) return { kind: 'failed', reason: 'stopped' };
      return await this.#measureIn(member, path, requests, signal);
    } finally {
      delete member.job;
      member.thread.setBusy(false);
      this.#waiting.shift()?.();
      this.#endWhenIdle();
    }
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    clearTimeout(this.#idle);
    await Promise.all([...this.#members].map(({ thread }) => thread.end()));
  }

  #measureIn(
    member: Member,
    path: string,
    requests: readonly MeasureRequest[],
    signal: AbortSignal,
  ): Promise<MeasureOutcome> {
    const id = (member.job as { id: number }).id;
    return new Promise((resolve) => {
      let late: ReturnType<typeof setTimeout> | undefined;
      const stop = () => {
        member.thread.send({ kind: 'stop', id });
        late = setTimeout(() => void member.thread.end(), stopTime);
      };
      const finish = (outcome: MeasureOutcome) => {
        clearTimeout(late);
        signal.removeEventListener('abort', stop);
        resolve(outcome);
      };
      member.job = { id, finish };
      signal.addEventListener('abort', stop);
      member.thread.setBusy(true);
      member.thread.send({ kind: 'measure', id, path, requests });
    });
  }

  /** A thread without work, started where there may be more of them, else waited for; it is taken with the answer. */
  async #freeMember(): Promise<Member | undefined> {
    for (;;) {
      if (this.#isClosed) return undefined;
      clearTimeout(this.#idle);
      let member = [...this.#members].find(({ job }) => job === undefined);
      if (!member && this.#members.size < this.width) member = this.#startMember();
      if (member) {
        member.job = { id: ++this.#lastId, finish: () => {} };
        return member;
      }
      if (this.#members.size === 0) return undefined;
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    }
  }

  #startMember(): Member | undefined {
    const started: { member?: Member } = {};
    try {
      const thread = this.#start({
        answered: ({ id, outcome }) => {
          const job = started.member?.job;
          if (job?.id === id) job.finish(outcome);
        },
        ended: () => {
          if (!started.member) return;
          this.#members.delete(started.member);
          started.member.job?.finish({ kind: 'failed', reason: 'broken' });
        },
      });
      started.member = { thread };
    } catch {
      return undefined;
    }
    this.#members.add(started.member);
    return started.member;
  }

  #endWhenIdle(): void {
    clearTimeout(this.#idle);
    if ([...this.#members].some(({ job }) => job !== undefined)) return;
    this.#idle = setTimeout(() => {
      const ended = [...this.#members];
      this.#members.clear();
      for (const { thread } of ended) void thread.end();
    }, idleTime);
    this.#idle.unref?.();
  }
}
