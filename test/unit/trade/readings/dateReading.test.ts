import { describe, expect, it } from 'vitest';
import { pairInDate } from '../../../../server/trade/readings/dateReading';

// What spreadsheets show where two small numbers are typed with a dash between them (common practice).
describe('a date that was a range', () => {
  it.each([
    ['31-Jan', 1, 31],
    ['Jan-31', 1, 31],
    ['1-Dec', 1, 12],
    ['12. Jan', 1, 12],
    ['03. Mrz', 0, 0],
    ['24. Mrz', 3, 24],
    ['01. Dez', 1, 12],
    ['31/janv.', 1, 31],
    ['31-ene', 1, 31],
    ['31-gen', 1, 31],
    ['24-out', 10, 24],
    ['30-mai', 5, 30],
    ['31 sty', 1, 31],
    ['1月31日', 1, 31],
    ['1월 31일', 1, 31],
    ['30.янв.', 1, 30],
    ['Feb-64', 2, 64],
    ['2025-01-31 00:00:00', 1, 31],
    ['31/01/2024', 1, 31],
    ['1/31/2024', 1, 31],
    ['1945-01-01', 1, 45],
  ])('"%s"', (text, low, high) => {
    expect(pairInDate(text)).toEqual(low === 0 ? undefined : { low, high });
  });

  it.each(['', '1-31', '32-63', 'C3-Jan', 'Jan', 'koto1', '60', 'Mar_60.wav', '2.5', '12:30', '1.2.3'])(
    'is not "%s"',
    (text) => {
      expect(pairInDate(text)).toBeUndefined();
    },
  );
});
