import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PairNumbers } from '../../../../server/model/overlaps/pairNumbers';

describe('numbers of pairs', () => {
  it('count the different pairs in the order in which they come', () => {
    const part = fc.oneof(fc.integer({ min: -3, max: 3 }), fc.integer());
    fc.assert(
      fc.property(fc.array(fc.tuple(part, part), { maxLength: 200 }), (pairs) => {
        const numbers = new PairNumbers();
        const expected = new Map<string, number>();
        for (const [first, second] of pairs) {
          const text = `${first} ${second}`;
          if (!expected.has(text)) expected.set(text, expected.size);
          expect(numbers.numberOf(first, second)).toBe(expected.get(text));
        }
        expect(numbers.count).toBe(expected.size);
      }),
    );
  });

  it.each([0, 500, 20_000])(
    'stay as they are while the table grows from room for %i pairs',
    (expectedCount) => {
      const numbers = new PairNumbers(expectedCount);
      // Pairs that differ in their upper bits alone, and in their lower ones alone.
      const pairs = Array.from({ length: 9000 }, (_, at) =>
        at % 2 === 0 ? ([at << 17, at << 3] as const) : ([at, -at] as const),
      );
      for (let round = 0; round < 2; round++) {
        const found = pairs.map(([first, second]) => numbers.numberOf(first, second));
        expect(found).toEqual([...pairs.keys()]);
      }
      expect(numbers.count).toBe(pairs.length);
    },
  );
});
