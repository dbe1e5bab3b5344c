import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance, nearestWords } from '../../../../server/model/text/nearest';

/** Optimal string alignment distance straight from its recursive definition. */
function distanceByDefinition(from: string, to: string): number {
  const known = new Map<string, number>();
  const distance = (i: number, j: number): number => {
    if (i === 0 || j === 0) return i + j;
    const key = `${i},${j}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    const options = [
      distance(i - 1, j) + 1,
      distance(i, j - 1) + 1,
      distance(i - 1, j - 1) + (from[i - 1] === to[j - 1] ? 0 : 1),
    ];
    if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) {
      options.push(distance(i - 2, j - 2) + 1);
    }
    const least = Math.min(...options);
    known.set(key, least);
    return least;
  };
  return distance(from.length, to.length);
}

describe('the edit distance', () => {
  // Textbook pairs: Levenshtein's kitten and sitting; CA and ABC, at which optimal string alignment and the
  // unrestricted distance of Damerau differ (3 and 2).
  it.each([
    ['kitten', 'sitting', 3],
    ['CA', 'ABC', 3],
    ['lokey', 'lokye', 1],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('from %s to %s is %i', (from, to, distance) => {
    expect(editDistance(from, to, 10)).toBe(distance);
    expect(editDistance(to, from, 10)).toBe(distance);
  });

  it('is that of the definition, or one more than the most that is asked for', () => {
    const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 7 });
    fc.assert(
      fc.property(word, word, fc.nat(8), (from, to, most) => {
        expect(editDistance(from, to, most)).toBe(Math.min(distanceByDefinition(from, to), most + 1));
      }),
      { numRuns: 1000 },
    );
  });
});

describe('the nearest words', () => {
  const names = ['lokey', 'hikey', 'lovel', 'hivel', 'volume', 'loop_mode'];

  it('come with the nearest first and letter case ignored', () => {
    expect(nearestWords('LOKEI', names, 2)).toEqual(['lokey']);
    expect(nearestWords('lokel', names, 3)).toEqual(['lokey', 'lovel']);
    expect(nearestWords('lokel', names, 1)).toEqual(['lokey']);
    expect(nearestWords('loop_mdoe', names, 1)).toEqual(['loop_mode']);
    expect(nearestWords('lovey12', ['lovey1', 'lovey12', 'lov'], 5)).toEqual(['lovey12', 'lovey1']);
  });

  it('are none where nothing is near', () => {
    expect(nearestWords('cutoff', names, 3)).toEqual([]);
    expect(nearestWords('', names, 3)).toEqual([]);
  });
});
