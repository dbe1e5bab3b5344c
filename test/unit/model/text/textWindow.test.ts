import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { keptTextBytes } from '../../../../server/model/text/textBytes';
import { TextWindow } from '../../../../server/model/text/textWindow';

const long = Array.from({ length: 100_000 }, (_, at) => `value ${at}é 😀\n`).join('');

/** The bytes of stretches of a text, as a window reaches them one after another. */
function reached(window: TextWindow, stretches: readonly (readonly [number, number])[]): Uint8Array[] {
  return stretches.map(([from, to]) => {
    const start = window.reach(from, to);
    return window.bytes.slice(from - start, to - start);
  });
}

describe('a text as bytes, a stretch at a time', () => {
  it('gives the bytes of all of it, forwards, back and in long stretches', () => {
    const all = keptTextBytes(long, 0);
    const stretch = fc.tuple(fc.nat(long.length), fc.nat(40)).map(([from, length]) => [from, from + length]);
    const inText = stretch.filter((one): one is [number, number] => (one[1] ?? 0) <= long.length);
    fc.assert(
      fc.property(fc.array(inText, { maxLength: 12 }), fc.boolean(), (given, isSorted) => {
        const stretches = isSorted ? [...given].sort((a, b) => a[0] - b[0]) : given;
        const found = reached(new TextWindow(long), stretches);
        // Bytes are compared as buffers: comparing them one by one takes a hundred times as long.
        const right = stretches.map(
          ([from, to], at) =>
            all.subarray(from, to).length === found[at]?.length &&
            Buffer.compare(all.subarray(from, to), found[at]) === 0,
        );
        expect(right).not.toContain(false);
      }),
      { numRuns: 10 },
    );
    expect(reached(new TextWindow(long), [[5, long.length - 5]])).toEqual([all.slice(5, -6)]);
  });

  it('holds little of a long text that is read from its start to its end', () => {
    const window = new TextWindow(long);
    let most = 0;
    for (let at = 0; at + 20 < long.length; at += 1000) {
      window.reach(at, at + 20);
      most = Math.max(most, window.bytes.length);
    }
    expect(most).toBeLessThan(long.length / 1.5);
  });
});
