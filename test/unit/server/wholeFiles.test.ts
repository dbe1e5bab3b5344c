import fc from 'fast-check';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { WholeFiles } from '../../../client/browser/wholeFiles';

/** Files of bytes that count up, by name; reading ends when the test says so. */
function played(limit: number) {
  const reads: { file: string; finish: () => void; fail: () => void }[] = [];
  const contents = new Map<string, Uint8Array>();
  const whole = new WholeFiles(
    (file) =>
      new Promise<Uint8Array>((resolve, reject) => {
        const finish = () => resolve(contents.get(file) ?? new Uint8Array(0));
        reads.push({ file, finish, fail: () => reject(new Error('broken')) });
      }),
    limit,
  );
  const state = (file: string, size: number, modified = 1) => {
    contents.set(
      file,
      Uint8Array.from({ length: size }, (_, at) => at % 256),
    );
    return { file, size, modified };
  };
  const namesRead = () => reads.map(({ file }) => file);
  return { whole, reads, state, namesRead };
}

const settle = () => new Promise((resolve) => setImmediate(resolve));

describe('stretches of files that are given as a whole', () => {
  afterEach(() => {
    vi.useRealTimers();
  });

  it('are those of the file, and the file is read once', async () => {
    const { whole, reads, state, namesRead } = played(1000);
    const a = state('a', 100);
    const answers = Promise.all([whole.range(a, 10, 3), whole.range(a, 98, 50), whole.range(a, 200, 5)]);
    await settle();
    reads[0]?.finish();
    expect((await answers).map((bytes) => [...bytes])).toEqual([[10, 11, 12], [98, 99], []]);
    expect([...(await whole.range(a, 0, 1))]).toEqual([0]);
    expect(namesRead()).toEqual(['a']);
  });

  it('are copies, so that sending one does not send the whole file along', async () => {
    const { whole, reads, state } = played(1000);
    const answer = whole.range(state('a', 100), 10, 3);
    reads[0]?.finish();
    expect((await answer).buffer.byteLength).toBe(3);
  });

  it('are read anew when the file is in another state', async () => {
    const { whole, reads, state, namesRead } = played(1000);
    const first = whole.range(state('a', 10), 0, 1);
    reads[0]?.finish();
    await first;
    void whole.range(state('a', 10, 2), 0, 1);
    expect(namesRead()).toEqual(['a', 'a']);
  });

  it('wait for room, and push out what was unused longest', async () => {
    const { whole, reads, state, namesRead } = played(100);
    const [a, b, c] = [state('a', 60), state('b', 40), state('c', 30)];
    const answers = [a, b, c].map((one) => whole.range(one, 0, 1));
    await settle();
    expect(namesRead()).toEqual(['a', 'b']);
    reads[1]?.finish();
    await settle();
    expect(namesRead()).toEqual(['a', 'b', 'c']);
    reads[0]?.finish();
    reads[2]?.finish();
    await Promise.all(answers);
    await whole.range(a, 0, 1);
    expect(namesRead()).toEqual(['a', 'b', 'c']);
    void whole.range(b, 0, 1);
    expect(namesRead()).toEqual(['a', 'b', 'c', 'b']);
    expect(whole.bytes).toBe(100);
  });

  it('come from a file that is larger than all that may be held when nothing else is under way', async () => {
    const { whole, reads, state } = played(100);
    const small = whole.range(state('small', 10), 0, 1);
    const large = whole.range(state('large', 500), 499, 9);
    await settle();
    expect(reads).toHaveLength(1);
    reads[0]?.finish();
    await small;
    await settle();
    expect(whole.bytes).toBe(500);
    reads[1]?.finish();
    expect([...(await large)]).toEqual([499 % 256]);
  });

  it('that cannot be read reject for all who wait, and may be tried again', async () => {
    const { whole, reads, state } = played(100);
    const a = state('a', 100);
    const answers = Promise.allSettled([whole.range(a, 0, 1), whole.range(a, 1, 1)]);
    const other = whole.range(state('b', 100), 0, 1);
    reads[0]?.fail();
    expect((await answers).map(({ status }) => status)).toEqual(['rejected', 'rejected']);
    await settle();
    reads[1]?.finish();
    expect(await other).toHaveLength(1);
    expect(whole.bytes).toBe(100);
  });

  it('are held no longer when nobody asks for a while', async () => {
    vi.useFakeTimers();
    const { whole, reads, state } = played(1000);
    const answer = whole.range(state('a', 100), 0, 1);
    reads[0]?.finish();
    await answer;
    expect(whole.bytes).toBe(100);
    await vi.advanceTimersByTimeAsync(60_000);
    expect(whole.bytes).toBe(0);
  });

  it('are right and within bounds in whatever order they are asked for', async () => {
    const ask = fc.record({
      file: fc.nat(5),
      start: fc.nat(40),
      length: fc.nat(40),
    });
    await fc.assert(
      fc.asyncProperty(fc.scheduler(), fc.array(ask, { maxLength: 30 }), async (scheduler, asks) => {
        const sizeOf = (file: number) => 10 * file;
        const limit = 60;
        const content = (file: number) =>
          Uint8Array.from({ length: sizeOf(file) }, (_, at) => file * 40 + at);
        const whole = new WholeFiles(
          (file) => scheduler.schedule(Promise.resolve(content(Number(file)))),
          limit,
        );
        const answers = asks.map(({ file, start, length }) =>
          whole.range({ file: String(file), size: sizeOf(file), modified: 1 }, start, length),
        );
        const all = Promise.all(answers);
        await scheduler.waitFor(all);
        expect(whole.bytes).toBeLessThanOrEqual(limit);
        expect((await all).map((bytes) => [...bytes])).toEqual(
          asks.map(({ file, start, length }) => [...content(file).subarray(start, start + length)]),
        );
      }),
      { numRuns: 60 },
    );
  });
});
