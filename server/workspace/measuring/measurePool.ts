import type { MeasureOutcome } from './measureFile';
import type { MeasureRequest } from './measureRequest';
import type { Measurer } from './measurer';
import type { ThreadAnswer, ThreadMessage } from './measureThread';
import type { FileOrder, FileVisit } from './visitFile';

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
  /** `undefined` says that the thread ended before it answered. */
  job?: { id: number; finish: (answer: ThreadAnswer | undefined) => void };
}

/** Milliseconds without work after which threads are ended. */
const idleTime = 30_000;
/** Milliseconds that a thread is given to stop by itself. */
const stopTime = 2_000;

/**
 * Measures in threads of the host, one order each at a time. Threads are started when there is work for them and ended
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
    const answer = await this.#order((id) => ({ kind: 'measure', id, path, requests }), signal);
    if (answer === 'stopped') return { kind: 'failed', reason: 'stopped' };
    return answer && 'outcome' in answer ? answer.outcome : { kind: 'failed', reason: 'broken' };
  }

  async visit(orders: readonly FileOrder[], signal: AbortSignal): Promise<FileVisit[]> {
    const answer = await this.#order((id) => ({ kind: 'visit', id, orders }), signal);
    if (answer && answer !== 'stopped' && 'visits' in answer) return answer.visits;
    const [order] = orders;
    if (answer === 'stopped' || this.#isClosed || orders.length === 0) return orders.map(() => ({}));
    if (orders.length === 1 && order)
      return [order.requests.length > 0 ? { outcome: { kind: 'failed', reason: 'broken' } } : {}];
    // One of them breaks what looks at it; the others need not suffer for it.
    const visits: FileVisit[] = [];
    for (const one of orders) visits.push(...(await this.visit([one], signal)));
    return visits;
  }

  /** Has a thread carry out an order; `undefined` where it broke down or none can be started. */
  async #order(
    message: (id: number) => ThreadMessage,
    signal: AbortSignal,
  ): Promise<ThreadAnswer | 'stopped' | undefined> {
    const member = await this.#freeMember();
    if (!member) return undefined;
    try {
      if (signal.aborted) return 'stopped';
      return await this.#orderOf(member, message, signal);
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

  #orderOf(
    member: Member,
    message: (id: number) => ThreadMessage,
    signal: AbortSignal,
  ): Promise<ThreadAnswer | undefined> {
    const id = (member.job as { id: number }).id;
    return new Promise((resolve) => {
      let late: ReturnType<typeof setTimeout> | undefined;
      const stop = () => {
        member.thread.send({ kind: 'stop', id });
        late = setTimeout(() => void member.thread.end(), stopTime);
      };
      const finish = (answer: ThreadAnswer | undefined) => {
        clearTimeout(late);
        signal.removeEventListener('abort', stop);
        resolve(answer);
      };
      member.job = { id, finish };
      signal.addEventListener('abort', stop);
      member.thread.setBusy(true);
      member.thread.send(message(id));
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
        answered: (answer) => {
          const job = started.member?.job;
          if (job?.id === answer.id) job.finish(answer);
        },
        ended: () => {
          if (!started.member) return;
          this.#members.delete(started.member);
          started.member.job?.finish(undefined);
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
