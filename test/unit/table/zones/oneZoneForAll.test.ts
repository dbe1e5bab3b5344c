import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const keys = (text: string) => regions(text).map(({ lokey, hikey }) => `${lokey ?? '-'} ${hikey ?? '-'}`);
const rows = (up: number) =>
  table(
    'File | Low key | Root | Trigger',
    'nyc_a.wav | 36 | 38 | press',
    'nyc_b.wav | 41 | 43 | press',
    'nyc_c.wav | 46 | 49 | press',
    `nyc_up.wav | ${up} | 50 | release`,
  );

describe('one zone beside others of which the lowest keys alone are given', () => {
  it.each(['The highest goes up to 84.', 'Der höchste reicht bis 84.', 'Det högsta går upp till 84.'])(
    'ends where all others end, if it starts where they start: "%s"',
    (said) => {
      expect(keys(`${said}\n\n${rows(36)}`)).toEqual(['36 40', '41 45', '46 84', '36 84']);
      expect(notesOf(`${said}\n\n${rows(36)}`).join('\n')).toMatch(
        /1 zone of another kind has the keys of all/,
      );
    },
  );

  it('stays open where it starts elsewhere, or nothing gives the end', () => {
    expect(keys(`The highest goes up to 84.\n\n${rows(44)}`)[3]).toBe('44 -');
    expect(keys(rows(36))[3]).toBe('36 -');
  });
});
