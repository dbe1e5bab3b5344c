import { mkdtempSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import wavefile from 'wavefile';
import { nodeFiles } from '../../../../server/workspace/files/nodeFiles';
import type { MeasureThread, ThreadEvents } from '../../../../server/workspace/measuring/measurePool';
import { MeasurePool } from '../../../../server/workspace/measuring/measurePool';
import type { ThreadMessage } from '../../../../server/workspace/measuring/measureThread';
import { nodeMeasurer } from '../../../../server/workspace/measuring/nodeMeasureThread';
import type { FileVisit } from '../../../../server/workspace/measuring/visitFile';
import { temporaryFolder } from '../../../temporaryFolder';

const pitch = [{ what: 'pitch' }] as const;
const never = () => new AbortController().signal;

/** A thread that does what a test says. */
class PlayedThread implements MeasureThread {
  readonly heard: ThreadMessage[] = [];
  readonly events: ThreadEvents;
  isBusy = false;
  isEnded = false;

  constructor(events: ThreadEvents) {
    this.events = events;
  }

  send(message: ThreadMessage): void {
    this.heard.push(message);
  }

  setBusy(isBusy: boolean): void {
    this.isBusy = isBusy;
  }

  async end(): Promise<void> {
    this.isEnded = true;
    this.events.ended();
  }

  /** Answers the order that came last. */
  answer(hertz: number): void {
    const id = (this.heard.at(-1) as ThreadMessage).id;
    const results = [{ hertz, key: 69, cents: 0, confidence: 1 }];
    this.events.answered({ id, outcome: { kind: 'measured', results } });
  }
}

function played(width: number): { pool: MeasurePool; threads: PlayedThread[] } {
  const threads: PlayedThread[] = [];
  const pool = new MeasurePool((events) => {
    const thread = new PlayedThread(events);
    threads.push(thread);
    return thread;
  }, width);
  return { pool, threads };
}

const settle = () => new Promise((resolve) => setImmediate(resolve));
const pathsOf = (thread: PlayedThread | undefined) =>
  thread?.heard.map((message) => (message.kind === 'measure' ? message.path : message.kind));

describe('a pool of threads that measure', () => {
  it('starts none before there is work, and no more than it may', async () => {
    const { pool, threads } = played(2);
    expect(threads).toEqual([]);
    const outcomes = ['a', 'b', 'c'].map((path) => pool.measure(path, pitch, never()));
    await settle();
    expect(threads.map(pathsOf)).toEqual([['a'], ['b']]);
    threads[0]?.answer(440);
    expect(await outcomes[0]).toMatchObject({ kind: 'measured', results: [{ hertz: 440 }] });
    await settle();
    expect(threads.map(pathsOf)).toEqual([['a', 'c'], ['b']]);
    threads[0]?.answer(660);
    threads[1]?.answer(550);
    expect(await outcomes[1]).toMatchObject({ results: [{ hertz: 550 }] });
    expect(await outcomes[2]).toMatchObject({ results: [{ hertz: 660 }] });
    expect(threads.map(({ isBusy }) => isBusy)).toEqual([false, false]);
  });

  it('loses the file that a thread broke down over, and no other', async () => {
    const { pool, threads } = played(1);
    const [first, second] = ['a', 'b'].map((path) => pool.measure(path, pitch, never()));
    await settle();
    threads[0]?.events.ended();
    expect(await first).toEqual({ kind: 'failed', reason: 'broken' });
    await settle();
    expect(pathsOf(threads[1])).toEqual(['b']);
    threads[1]?.answer(440);
    expect((await second)?.kind).toBe('measured');
  });

  it('answers that it is broken where no thread can be started', async () => {
    const pool = new MeasurePool(() => {
      throw new Error('no threads here');
    }, 2);
    expect(await pool.measure('a', pitch, never())).toEqual({ kind: 'failed', reason: 'broken' });
  });

  it('passes on that nobody wants a file any more', async () => {
    const { pool, threads } = played(1);
    const [first, second] = [new AbortController(), new AbortController()];
    const outcome = pool.measure('a', pitch, first.signal);
    const waiting = pool.measure('b', pitch, second.signal);
    await settle();
    second.abort();
    first.abort();
    expect(pathsOf(threads[0])).toEqual(['a', 'stop']);
    const id = threads[0]?.heard[0]?.id;
    threads[0]?.events.answered({ id, outcome: { kind: 'failed', reason: 'stopped' } });
    expect(await outcome).toEqual({ kind: 'failed', reason: 'stopped' });
    expect(await waiting).toEqual({ kind: 'failed', reason: 'stopped' });
    expect(pathsOf(threads[0])).toEqual(['a', 'stop']);
  });

  it('ends its threads when it is closed, and measures no more', async () => {
    const { pool, threads } = played(2);
    const outcome = pool.measure('a', pitch, never());
    await settle();
    await pool.close();
    expect(await outcome).toMatchObject({ kind: 'failed' });
    expect(threads.map(({ isEnded }) => isEnded)).toEqual([true]);
    expect(await pool.measure('b', pitch, never())).toMatchObject({ kind: 'failed' });
  });
});

describe('a visit to several files by a pool', () => {
  const orders = ['a', 'b', 'c'].map((path) => ({ path, requests: [] }));
  const visitOf = (path: string): FileVisit => ({ reading: { kind: 'unreadable', reason: path } });

  /** Answers the last order of a thread. */
  function answer(thread: PlayedThread | undefined): void {
    const message = thread?.heard.at(-1);
    if (message?.kind !== 'visit') throw new Error('no visit was ordered');
    thread?.events.answered({ id: message.id, visits: message.orders.map(({ path }) => visitOf(path)) });
  }

  it('is one order', async () => {
    const { pool, threads } = played(2);
    const visits = pool.visit(orders, never());
    await settle();
    expect(threads).toHaveLength(1);
    answer(threads[0]);
    expect(await visits).toEqual(orders.map(({ path }) => visitOf(path)));
  });

  it('costs the one that breaks the thread, and no other', async () => {
    const { pool, threads } = played(1);
    const visits = pool.visit(orders, never());
    await settle();
    threads[0]?.events.ended();
    await settle();
    answer(threads[1]);
    await settle();
    threads[1]?.events.ended();
    await settle();
    answer(threads[2]);
    expect(await visits).toEqual([visitOf('a'), {}, visitOf('c')]);
  });

  it('is nothing where no thread can be started or nobody wants it', async () => {
    const pool = new MeasurePool(() => {
      throw new Error('no threads here');
    }, 2);
    expect(await pool.visit(orders, never())).toEqual([{}, {}, {}]);
    const { pool: other } = played(1);
    const stopped = new AbortController();
    stopped.abort();
    expect(await other.visit(orders, stopped.signal)).toEqual([{}, {}, {}]);
  });
});

describe('threads of Node', () => {
  let folder: string;

  beforeAll(async () => {
    folder = temporaryFolder('zonewright-threads');
    const root = fileURLToPath(new URL('../../../..', import.meta.url));
    await build({
      absWorkingDir: root,
      entryPoints: ['server/measureWorker.ts'],
      outfile: `${folder}/measureWorker.js`,
      bundle: true,
      platform: 'node',
      target: 'node20',
      format: 'cjs',
      logLevel: 'silent',
    });
    const wav = new wavefile.WaveFile();
    const frames = Float64Array.from({ length: 22050 }, (_, at) => Math.sin((2 * Math.PI * at) / 100));
    wav.fromScratch(1, 44100, '32f', frames);
    writeFileSync(`${folder}/a.wav`, wav.toBuffer());
  });

  it('open a file once and measure all that is asked of it', async () => {
    const pool = nodeMeasurer(nodeFiles, folder) as MeasurePool;
    expect(pool.threads).toBe(0);
    const requests = [{ what: 'pitch' }, { what: 'loopSeam', start: 1000, end: 8999 }] as const;
    const outcome = await pool.measure(`${folder}/a.wav`, requests, never());
    expect(pool.threads).toBe(1);
    // A period of 100 frames at 44,100 frames a second is 441 Hz; a loop of whole periods of a sine closes smoothly.
    expect(outcome).toMatchObject({
      kind: 'measured',
      results: [{ key: 69, hertz: expect.closeTo(441, 1) }, { isAudible: false }],
    });
    expect(await pool.measure(`${folder}/none.wav`, pitch, never())).toEqual({
      kind: 'failed',
      reason: 'unreadable',
    });
    await pool.close();
    expect(pool.threads).toBe(0);
  });

  it('are not there when the program runs from its source', async () => {
    const measurer = nodeMeasurer(nodeFiles, `${folder}/elsewhere`);
    expect(measurer).not.toBeInstanceOf(MeasurePool);
    const outcome = await measurer.measure(`${folder}/a.wav`, pitch, never());
    expect(outcome).toMatchObject({ kind: 'measured', results: [{ key: 69 }] });
  });

  it('that break down at once are one failed measure', async () => {
    const broken = mkdtempSync(join(folder, 'broken-'));
    writeFileSync(`${broken}/measureWorker.js`, 'throw new Error("broken");');
    const pool = nodeMeasurer(nodeFiles, broken) as MeasurePool;
    const outcome = await pool.measure(`${folder}/a.wav`, pitch, never());
    expect(outcome).toEqual({ kind: 'failed', reason: 'broken' });
    expect(pool.threads).toBe(0);
  });
});
