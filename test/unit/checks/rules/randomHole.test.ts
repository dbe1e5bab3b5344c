import { describe, expect, it } from 'vitest';
import { randomHole } from '../../../../server/checks/rules/randomHole';
import { foundBy, markedBy } from '../foundBy';

type Range = [low: number | undefined, high: number | undefined, more?: string];
const draws = (...ranges: Range[]) =>
  `<group> key=60\n${ranges
    .map(
      ([low, high, more = '']) =>
        `<region> ${low === undefined ? '' : `lorand=${low}`} ${high === undefined ? '' : `hirand=${high}`} ${more}`,
    )
    .join('\n')}`;
const marks = (text: string) => markedBy(randomHole, text);
const messages = (text: string) => foundBy(randomHole, text).messages;

/** sfzformat.com: a region plays if lorand <= r < hirand, r being drawn from 0 to 1 at each strike; 0 and 1 are the defaults. */
describe('random numbers for which no region plays', () => {
  it.each<[string, string, string[], RegExp]>([
    ['between', draws([0, 0.4], [0.5, 1]), ['0.5'], /from 0.4 to 0.5 on key 60 \(C4\), so about 10 of 100/],
    ['before', draws([0.1, 0.5], [0.5, 1]), ['0.1'], /from 0 to 0.1 .*10 of 100/],
    ['behind', draws([0, 0.5], [0.5, 0.9]), ['0.9'], /from 0.9 to 1 .*10 of 100/],
    ['with ends left open', draws([undefined, 0.4], [0.5, undefined]), ['0.5'], /from 0.4 to 0.5/],
    ['in any order', draws([0.5, 1], [0, 0.4]), ['0.5'], /from 0.4 to 0.5/],
    ['behind a range inside another', draws([0, 0.8], [0.1, 0.2], [0.9, 1]), ['0.9'], /from 0.8 to 0.9/],
    ['small ones', draws([0, 0.5], [0.503, 1]), ['0.503'], /about 1 of 100/],
    ['with low ends alone', draws([0.1, undefined], [0.5, undefined]), ['0.1'], /from 0 to 0.1/],
    ['beside a range of nothing', draws([0, 0.4], [0.4, 0.4]), ['0.4'], /from 0.4 to 1 .*60 of 100/],
    ['with high ends alone', draws([undefined, 0.5], [undefined, 0.9]), ['0.9'], /from 0.9 to 1/],
  ])('are told: %s', (_, text, expected, message) => {
    expect(marks(text)).toEqual(expected);
    expect(messages(text)[0]).toMatch(message);
  });

  it('are told for each stretch', () => {
    expect(marks(draws([0.1, 0.4], [0.5, 0.9]))).toEqual(['0.1', '0.5', '0.9']);
  });

  it.each([
    ['none is left', draws([0, 0.5], [0.5, 1])],
    ['ranges overlap', draws([0, 0.6], [0.5, 1])],
    ['what is left comes of rounding', draws([0, 0.333], [0.334, 0.667], [0.667, 1])],
    ['what is left at the end comes of rounding', draws([0, 0.5], [0.5, 0.999])],
    ['it is one alone, meant to sound at times', draws([0, 0.4])],
    ['nothing is random', '<region> key=60 <region> key=60'],
    ['another region plays then', `${draws([0, 0.4], [0.5, 1])}\n<group>\n<region> key=60`],
    [
      'another region of more keys plays then',
      `${draws([0, 0.4], [0.5, 1])}\n<group>\n<region> lorand=0.3 hirand=0.6`,
    ],
    ['they sound at release', draws([0, 0.4, 'trigger=release'], [0.5, 1, 'trigger=release'])],
    ['each plays under conditions of its own', draws([0, 0.4, 'locc1=64'], [0.5, 1, 'hicc1=63'])],
    ['each has a turn of its own', draws([0, 0.4, 'seq_length=2'], [0.5, 1, 'seq_length=2 seq_position=2'])],
    ['all of one is drawn', draws([0, 1], [0.2, 0.4])],
    ['one is turned round', draws([0.4, 0.1], [0.5, 1])],
  ])('are none where %s', (_, text) => {
    expect(marks(text)).toEqual([]);
  });

  it('are looked for in equal conditions only', () => {
    const layers = `<group> key=60\n<region> hivel=63 hirand=0.5\n<region> hivel=63 lorand=0.5\n<region> lovel=64 hirand=0.5\n<region> lovel=64 lorand=0.6`;
    expect(marks(layers)).toEqual(['0.6']);
    // At the other turn of a round robin nothing plays.
    const turns =
      '<group> key=60 seq_length=2\n<region> hirand=0.4\n<region> lorand=0.5\n<region> seq_position=2';
    expect(marks(turns)).toEqual(['0.5']);
    expect(marks(`${turns}\n<region> seq_position=1`)).toEqual([]);
  });

  it('are told once for a value that many share', () => {
    const text =
      '<group> hirand=0.4\n<region> key=60\n<region> key=61\n<group> lorand=0.5\n<region> key=60\n<region> key=61';
    expect(marks(text)).toEqual(['0.5']);
  });
});

describe('the rule', () => {
  it('is told by the code and severity that the README lists', () => {
    expect(randomHole).toMatchObject({
      code: 'random-hole',
      severity: 'warning',
      finds: expect.stringContaining('without sound'),
    });
  });
});
