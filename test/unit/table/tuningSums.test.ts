import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const column = (...cells: readonly string[]) =>
  table('File | Key | Tune', ...cells.map((cell, at) => `bell ${at}.wav | ${40 + at} | ${cell}`));
const cents = (text: string) =>
  regions(text).map(({ tune = '0', transpose = '0' }) => Number(tune) + 100 * Number(transpose));

describe('a cell with two amounts of tuning', () => {
  it('is their sum, with a remark behind it too', () => {
    const text = column(
      '+2 st \u221230 ct (old reed)',
      '+1 st, -5 ct late',
      '-15 ct +1 st',
      '1 Halbton und -7 Cent',
      '3 ct',
    );
    expect(cents(text)).toEqual([170, 95, 85, 93, 3]);
    expect(notesOf(text).join()).toMatch(/is read as \+2 st \u221230 ct; the rest is a remark/);
  });

  it('is left out, not halved, where the sum is open', () => {
    const text = column('-2 st 30 ct', '+1 st -40', '4 ct', '5 ct');
    expect(cents(text)).toEqual([0, 0, 4, 5]);
    expect(notesOf(text).join()).toMatch(/"-2 st 30 ct" is not a number of cents; it is left out/);
  });

  it.each(['ok', 'in tune', 'stimmt', 'juste', '\u2713'])('is nothing where it says %s', (word) => {
    const text = column(word, '4 ct', '-9 ct');
    expect(cents(text)).toEqual([0, 4, -9]);
    expect(notesOf(text).join()).toMatch(/is read as in tune: nothing is changed/);
    expect(notesOf(text).join()).not.toMatch(/left out/);
  });
});
