import { describe, expect, it } from 'vitest';
import type { MeasureFunctions } from '../../../../server/workspace/measuring/measureFile';
import { measureFile } from '../../../../server/workspace/measuring/measureFile';
import type { ThreadAnswer } from '../../../../server/workspace/measuring/measureThread';
import { measuringThread } from '../../../../server/workspace/measuring/measureThread';
import { MemoryFiles } from '../memoryFiles';

/** Measures that read a byte at a time until the file ends; a file that cannot be read counts as measured to there. */
function readingMeasures(onRead: (at: number) => void = () => {}): MeasureFunctions {
  return {
    async pitch(reader) {
      let at = 0;
      try {
        for (; at < reader.size; at++) {
          onRead(at);
          await reader.read(at, 1);
        }
      } catch {
        return null;
      }
      return { hertz: at, key: 0, cents: 0, confidence: 1 };
    },
    survey: async () => null,
    loopSeam: async () => {
      throw new Error('broken');
    },
  };
}

const pitch = { what: 'pitch' } as const;
const never = () => new AbortController().signal;

describe('measuring a file', () => {
  it('opens and closes it once for all that is asked', async () => {
    const files = new MemoryFiles({ '/a': 'abc' });
    const outcome = await measureFile(files, '/a', [pitch, { what: 'survey' }], never(), readingMeasures());
    expect(outcome).toMatchObject({ kind: 'measured', results: [{ hertz: 3 }, null] });
    expect([files.opened, files.closed]).toEqual([['/a'], 1]);
  });

  it('ends at the next read when it is stopped', async () => {
    const files = new MemoryFiles({ '/a': 'abcdefgh' });
    const stop = new AbortController();
    const reads: number[] = [];
    const measures = readingMeasures((at) => {
      reads.push(at);
      if (at === 2) stop.abort();
    });
    const outcome = await measureFile(files, '/a', [pitch, pitch], stop.signal, measures);
    expect(outcome).toEqual({ kind: 'failed', reason: 'stopped' });
    expect(reads).toEqual([0, 1, 2]);
    expect(files.closed).toBe(1);
  });

  it('fails where the disk does', async () => {
    const files = new MemoryFiles({ '/a': 'abc' });
    expect(await measureFile(files, '/b', [pitch], never())).toEqual({
      kind: 'failed',
      reason: 'unreadable',
    });
    files.beforeAnswer = async () => {
      throw new Error('the disk is gone');
    };
    const outcome = await measureFile(files, '/a', [pitch], never(), readingMeasures());
    expect(outcome).toEqual({ kind: 'failed', reason: 'unreadable' });
    expect(files.closed).toBe(1);
  });

  it('fails where a measure does', async () => {
    const files = new MemoryFiles({ '/a': 'abc' });
    const seam = { what: 'loopSeam', start: 0, end: 1 } as const;
    const outcome = await measureFile(files, '/a', [seam], never(), readingMeasures());
    expect(outcome).toEqual({ kind: 'failed', reason: 'broken' });
    expect(files.closed).toBe(1);
  });
});

describe('a thread that measures', () => {
  it('answers each order once, those that are stopped too', async () => {
    const files = new MemoryFiles({ '/a': 'abc', '/b': 'abcdef' });
    const answers: ThreadAnswer[] = [];
    let settle = () => {};
    const settled = new Promise<void>((resolve) => {
      settle = resolve;
    });
    const tell = measuringThread(
      files,
      (answer) => {
        answers.push(answer);
        if (answers.length === 2) settle();
      },
      readingMeasures(),
    );
    tell({ kind: 'measure', id: 1, path: '/a', requests: [pitch] });
    tell({ kind: 'measure', id: 2, path: '/b', requests: [pitch] });
    tell({ kind: 'stop', id: 2 });
    tell({ kind: 'stop', id: 99 });
    await settled;
    answers.sort((a, b) => a.id - b.id);
    expect(answers).toMatchObject([
      { id: 1, outcome: { kind: 'measured', results: [{ hertz: 3 }] } },
      { id: 2, outcome: { kind: 'failed', reason: 'stopped' } },
    ]);
  });
});
