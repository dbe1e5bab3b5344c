import { Worker } from 'node:worker_threads';

/** A job for a thread, and its answer, as they are sent. */
export interface JobMessage<T> {
  id: number;
  content: T;
}

/** Memory that a thread may take before it breaks down alone, in megabytes. */
const mostMegabytes = 1024;
/** Of it, what is made and dropped with each job. */
const youngMegabytes = 16;

interface Member<Answer> {
  worker: Worker;
  finish: ((answer: Answer | undefined) => void) | undefined;
}

/** Has jobs done in threads that run a bundle, one job a thread at a time. A thread that breaks down costs the job that it was at. */
export class NodeJobPool<Job, Answer> {
  readonly width: number;
  readonly #start: () => Worker;
  readonly #members = new Set<Member<Answer>>();
  readonly #waiting: (() => void)[] = [];
  #lastId = 0;

  /** `data` is given to each thread when it starts. */
  constructor(bundle: string, data: unknown, width: number) {
    this.width = Math.max(1, width);
    this.#start = () =>
      new Worker(bundle, {
        workerData: data,
        resourceLimits: { maxOldGenerationSizeMb: mostMegabytes, maxYoungGenerationSizeMb: youngMegabytes },
      });
  }

  /** What a thread answers to a job; `undefined` where the thread broke down. */
  async run(job: Job): Promise<Answer | undefined> {
    const member = await this.#free();
    const id = ++this.#lastId;
    try {
      return await new Promise<Answer | undefined>((resolve) => {
        member.finish = resolve;
        const message: JobMessage<Job> = { id, content: job };
        member.worker.postMessage(message);
      });
    } finally {
      member.finish = undefined;
      this.#waiting.shift()?.();
    }
  }

  /** Ends all threads. */
  async close(): Promise<void> {
    const ended = [...this.#members];
    this.#members.clear();
    await Promise.all(ended.map(({ worker }) => worker.terminate()));
  }

  async #free(): Promise<Member<Answer>> {
    for (;;) {
      for (const member of this.#members) if (!member.finish) return taken(member);
      if (this.#members.size < this.width) return taken(this.#begin());
      await new Promise<void>((resolve) => this.#waiting.push(resolve));
    }
  }

  #begin(): Member<Answer> {
    const worker = this.#start();
    const member: Member<Answer> = { worker, finish: undefined };
    this.#members.add(member);
    worker.on('message', ({ content }: JobMessage<Answer>) => member.finish?.(content));
    // An error is followed by the exit, which says all that matters.
    worker.on('error', () => {});
    worker.once('exit', () => {
      this.#members.delete(member);
      member.finish?.(undefined);
    });
    return member;
  }
}

/** A member that nobody else takes until its job is set. */
function taken<Answer>(member: Member<Answer>): Member<Answer> {
  member.finish = () => {};
  return member;
}
