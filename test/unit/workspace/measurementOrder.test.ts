import { describe, expect, it } from 'vitest';
import { MeasureCache } from '../../../server/workspace/measuring/measureCache';
import type { MeasureOutcome } from '../../../server/workspace/measuring/measureFile';
import { Measurements } from '../../../server/workspace/measuring/measurements';
import type { MeasureRequest } from '../../../server/workspace/measuring/measureRequest';
import type { Measurer } from '../../../server/workspace/measuring/measurer';
import { MemoryFiles } from './memoryFiles';

const settle = () => new Promise((resolve) => setImmediate(resolve));

interface Order {
  path: string;
  what: string[];
  signal: AbortSignal;
  answer: (outcome: MeasureOutcome) => void;
}

/** A measurer that waits for a test to answer. */
class AnsweredMeasurer implements Measurer {
  readonly width: number;
  readonly orders: Order[] = [];

  constructor(width = 1) {
    this.width = width;
  }

  measure(path: string, requests: readonly MeasureRequest[], signal: AbortSignal): Promise<MeasureOutcome> {
    return new Promise((answer) => {
      this.orders.push({ path, what: requests.map(({ what }) => what), signal, answer });
      signal.addEventListener('abort', () => answer({ kind: 'failed', reason: 'stopped' }));
    });
  }

  async close(): Promise<void> {}

  /** Answers the latest order with a pitch, or nothing, for each request. */
  async answer(key: number | null = 60): Promise<void> {
    const { what, answer } = this.orders.at(-1) as Order;
    const result = key === null ? null : { hertz: 1, key, cents: 0, confidence: 1 };
    answer({ kind: 'measured', results: what.map(() => result) });
    await settle();
  }

  async fail(reason: 'unreadable' | 'broken'): Promise<void> {
    this.orders.at(-1)?.answer({ kind: 'failed', reason });
    await settle();
  }

  get paths(): string[] {
    return this.orders.map(({ path }) => path);
  }
}

const names = ['a', 'b', 'c', 'd'];
const disk = () => new MemoryFiles(Object.fromEntries(names.map((name) => [`/${name}`, name])));

function background(width = 1) {
  const files = disk();
  const measurer = new AnsweredMeasurer(width);
  const measurements = new Measurements(files, { measurer, inBackground: true });
  const ask = (...paths: string[]) => {
    return () => paths.map((path) => measurements.pitch(measurements.file(path))?.key);
  };
  return { files, measurer, measurements, ask };
}

describe('measuring in the background', () => {
  it('begins with what is asked for on behalf of somebody, and only that', async () => {
    const { measurer, measurements, ask } = background();
    ask('/d')();
    expect(measurements.collect('one', ask('/a', '/b'))).toEqual([undefined, undefined]);
    await settle();
    await measurer.answer(50);
    await measurer.answer(51);
    expect(measurer.paths).toEqual(['/a', '/b']);
    expect(ask('/a', '/b', '/d')()).toEqual([50, 51, undefined]);
    expect(measurements.wants).toBe(false);
  });

  it('measures all that is asked of a file in one visit', async () => {
    const { measurer, measurements } = background();
    measurements.collect('one', () => {
      const file = measurements.file('/a');
      measurements.pitch(file);
      measurements.survey(file);
      measurements.loopSeam(file, 1, 2);
      measurements.loopSeam(file, 1, 3);
      measurements.loopSeam(file, 1, 2);
    });
    await settle();
    expect(measurer.orders[0]?.what).toEqual(['pitch', 'survey', 'loopSeam', 'loopSeam']);
  });

  it('turns first to what was asked for last', async () => {
    const { measurer, measurements, ask } = background();
    measurements.collect('one', ask('/a', '/b', '/c'));
    await settle();
    measurements.collect('two', ask('/d'));
    await measurer.answer();
    await measurer.answer();
    expect(measurer.paths).toEqual(['/a', '/d', '/b']);
  });

  it('leaves what an owner does not ask for any more, and stops what is under way for nobody', async () => {
    const { measurer, measurements, ask } = background();
    measurements.collect('one', ask('/a', '/b', '/c'));
    await settle();
    measurements.collect('one', ask('/c'));
    expect(measurer.orders[0]?.signal.aborted).toBe(true);
    await settle();
    expect(measurer.paths).toEqual(['/a', '/c']);
    measurements.release('one');
    expect(measurer.orders[1]?.signal.aborted).toBe(true);
    await settle();
    expect(measurer.paths).toEqual(['/a', '/c']);
    expect(measurements.progress.total).toBe(0);
  });

  it('goes on with what another owner wants too', async () => {
    const { measurer, measurements, ask } = background();
    measurements.collect('one', ask('/a'));
    await settle();
    measurements.collect('two', ask('/a'));
    measurements.release('one');
    await settle();
    expect(measurer.orders[0]?.signal.aborted).toBe(false);
    await measurer.answer(52);
    expect(ask('/a')()).toEqual([52]);
    expect(measurer.paths).toEqual(['/a']);
  });

  it('tells whom it concerns, and how far it is', async () => {
    const { measurer, measurements, ask } = background();
    const told: unknown[] = [];
    const seen: string[] = [];
    measurements.onMeasured = (owners) => told.push([...owners]);
    measurements.onProgress = () => {
      const { done, total } = measurements.progress;
      seen.push(`${done}/${total}`);
    };
    measurements.collect('one', ask('/a', '/b'));
    measurements.collect('two', ask('/b'));
    await settle();
    await measurer.answer();
    await measurer.answer();
    expect(told).toEqual([['one'], ['one', 'two']]);
    expect(seen).toEqual(['0/2', '0/2', '1/2', '2/2']);
    expect(measurements.progress).toEqual({ done: 0, total: 0 });
  });

  it('works on as many files at a time as the measurer takes', async () => {
    const { measurer, measurements, ask } = background(3);
    measurements.collect('one', ask('/a', '/b', '/c', '/d'));
    await settle();
    expect(measurer.paths).toEqual(['/a', '/b', '/c']);
  });

  it('rests when it is told to, until the owner is another', async () => {
    const { measurer, measurements, ask } = background();
    measurements.collect('one', ask('/a', '/b'));
    await settle();
    const settled = measurements.settled('one');
    measurements.decline();
    await settled;
    measurements.collect('one', ask('/a', '/b'));
    await settle();
    expect(measurer.paths).toEqual(['/a']);
    measurements.release('one');
    measurements.collect('one', ask('/b'));
    await settle();
    expect(measurer.paths).toEqual(['/a', '/b']);
  });

  it('can be waited for', async () => {
    const { measurer, measurements, ask } = background();
    measurements.collect('one', ask('/a', '/b'));
    let isSettled = false;
    const settled = measurements.settled('one').then(() => {
      isSettled = true;
    });
    await settle();
    await measurer.answer();
    expect(isSettled).toBe(false);
    await measurer.answer();
    await settled;
    expect(isSettled).toBe(true);
    await measurements.settled('nobody');
  });
});

describe('a measure that fails', () => {
  it('is null where the file cannot be opened', async () => {
    const { measurer, measurements, ask } = background();
    measurements.collect('one', ask('/a'));
    await settle();
    await measurer.fail('unreadable');
    expect(measurements.file('/a').pitch).toBeNull();
  });

  it('is found among those of one visit, the others are as good as ever', async () => {
    const { measurer, measurements } = background();
    const file = measurements.file('/a');
    measurements.collect('one', () => [measurements.pitch(file), measurements.survey(file)]);
    await settle();
    await measurer.fail('broken');
    await measurer.answer(61);
    await measurer.fail('broken');
    expect(measurer.orders.map(({ what }) => what)).toEqual([['pitch', 'survey'], ['pitch'], ['survey']]);
    expect([file.pitch?.key, file.survey]).toEqual([61, null]);
    expect(measurements.progress.total).toBe(0);
  });
});

describe('a file that changes', () => {
  it('while it is measured is measured again', async () => {
    const { files, measurer, measurements, ask } = background();
    measurements.collect('one', ask('/a'));
    await settle();
    files.put('/a', 'another sound');
    const stat = await files.stat('/a');
    if (stat) measurements.learn('/a', stat);
    await measurer.answer(50);
    expect(ask('/a')()).toEqual([undefined]);
    expect(measurer.paths).toEqual(['/a', '/a']);
    await measurer.answer(51);
    expect(ask('/a')()).toEqual([51]);
  });

  it('keeps its results while it is only looked at', async () => {
    const { files, measurer, measurements, ask } = background();
    measurements.collect('one', ask('/a'));
    await settle();
    await measurer.answer(50);
    const look = async () => {
      const stat = await files.stat('/a');
      if (stat) measurements.learn('/a', stat);
    };
    await look();
    expect(ask('/a')()).toEqual([50]);
    files.put('/a', 'another sound');
    await look();
    expect(ask('/a')()).toEqual([undefined]);
  });
});

describe('what was measured before a restart', () => {
  it('is not measured again while the file is the same', async () => {
    const kept = new Map<string, Uint8Array>();
    const storage = {
      read: async (name: string) => kept.get(name),
      write: async (name: string, bytes: Uint8Array) => void kept.set(name, bytes),
    };
    const files = disk();
    const once = async (answers: number) => {
      const measurer = new AnsweredMeasurer();
      const measurements = new Measurements(files, { measurer });
      measurements.cache = new MeasureCache(storage);
      const file = measurements.file('/a');
      measurements.pitch(file);
      const loading = measurements.loadWanted();
      await settle();
      for (let at = 0; at < answers; at++) await measurer.answer(50 + at);
      await loading;
      await measurements.close();
      return [file.pitch?.key, measurer.orders.length];
    };
    expect(await once(1)).toEqual([50, 1]);
    expect(await once(0)).toEqual([50, 0]);
    files.put('/a', 'another');
    expect(await once(1)).toEqual([50, 1]);
  });

  it('is not kept where it failed', async () => {
    const kept = new Map<string, Uint8Array>();
    const files = disk();
    const measurer = new AnsweredMeasurer();
    const measurements = new Measurements(files, { measurer });
    measurements.cache = new MeasureCache({
      read: async () => undefined,
      write: async (name, bytes) => void kept.set(name, bytes),
    });
    measurements.pitch(measurements.file('/a'));
    const loading = measurements.loadWanted();
    await settle();
    await measurer.fail('broken');
    await loading;
    await measurements.close();
    expect(measurements.file('/a').pitch).toBeNull();
    expect(kept.size).toBe(0);
  });
});
