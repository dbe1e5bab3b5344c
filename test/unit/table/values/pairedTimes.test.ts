import { describe, expect, it } from 'vitest';
import type { TableOptions } from '../../../../server/table/readTable';
import { regions, table } from '../tableRegions';

const files = (frames: Readonly<Record<string, number>>, rate: number): TableOptions => ({
  framesOf: (name) => frames[name],
  rateOf: (name) => (name in frames ? rate : undefined),
});
const known = files({ 'brook.wav': 200_000, 'ford.wav': 300_000 }, 48_000);
const points = (text: string, options: TableOptions = known) =>
  regions(text, options).map(({ loop_start, loop_end }) => `${loop_start}-${loop_end}`);
const under = (heading: string, first: string, second: string) =>
  table(`File | Key | ${heading}`, `brook.wav | 48 | ${first}`, `ford.wav | 50 | ${second}`);

describe('two times in one cell', () => {
  const expected = ['14400-60000', '72000-156000'];

  it.each([
    ['Loop (s)', '0.300-1.250', '1.500-3.250'],
    ['Loop (s)', '0,300 - 1,250', '1,500 - 3,250'],
    ['Loop [sec]', '0.300/1.250', '1.500/3.250'],
    ['Loop in seconds', '0.300 to 1.250', '1.500 to 3.250'],
    ['Loop', '0.300 s - 1.250 s', '1.500 s - 3.250 s'],
    ['Loop', '0.300-1.250 s', '1.500-3.250 s'],
  ])('are decimal under "%s" as %s', (heading, first, second) => {
    expect(points(under(heading, first, second))).toEqual(expected);
  });

  it('are decimal where one is a length, and where all have three digits behind the mark', () => {
    expect(points(under('Loop start+length (s)', '0.300+0.950', '1.500+1.750'))).toEqual([
      '14400-59999',
      '72000-155999',
    ]);
    expect(points(under('Loop (s)', '1.100-2.500', '1.200-3.250'))).toEqual(['52800-120000', '57600-156000']);
  });

  it('are decimal where the text around says seconds', () => {
    expect(points(`All times in seconds.\n${under('Loop', '0.300-1.250', '1.500-3.250')}`)).toEqual(expected);
  });

  it('have thousands marks as counts of frames, and of milliseconds', () => {
    expect(points(under('Loop', '14.400-60.000', '72.000-156.000'))).toEqual(expected);
    expect(points(under('Loop (ms)', '300-1.250', '1.500-3.250'))).toEqual(expected);
  });
});
