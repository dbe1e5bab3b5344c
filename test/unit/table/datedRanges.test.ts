import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const velocities = (text: string) => regions(text).map(({ lovel, hivel }) => `${lovel ?? 1}-${hivel ?? 127}`);

describe('ranges of which a spreadsheet made dates', () => {
  it.each([
    ['24-Jan', '25-90', 'Low', 'High'],
    ['Jan-70', '71-100', 'Low', 'High'],
    ['24. Jan', '25-90', 'von Taste', 'bis Taste'],
    ['24/janv.', '25-90', 'Note de', "Note jusqu'à"],
    ['24-ene', '25-90', 'Nota desde', 'Nota hasta'],
    ['1月24日', '25-90', '最低キー', '最高キー'],
  ])('as "%s" are put back where the others go on from there', (dated, next, low, high) => {
    const last = Number(next.split('-')[1]) + 1;
    const text = table(
      `File | ${low} | ${high} | Velocity`,
      ...[60, 64].flatMap((key) => [
        `a${key}.wav | ${key} | ${key + 3} | ${dated}`,
        `b${key}.wav | ${key} | ${key + 3} | ${next}`,
        `c${key}.wav | ${key} | ${key + 3} | ${last}-127`,
      ]),
    );
    const first = `1-${Number(next.split('-')[0]) - 1}`;
    expect(velocities(text)).toEqual([first, next, `${last}-127`, first, next, `${last}-127`]);
    const told = notesOf(text).filter((note) =>
      note.includes('is a date that a spreadsheet made of a range'),
    );
    expect(told).toHaveLength(1);
    expect(told[0]).toContain(`"${dated}"`);
  });

  it('of keys are put back too', () => {
    const text = table(
      'File | Keys | Root',
      'a.wav | 23-Dec | 20',
      'b.wav | 24-35 | 30',
      'c.wav | 36-48 | 40',
    );
    expect(regions(text).map(({ lokey, hikey }) => `${lokey}-${hikey}`)).toEqual(['12-23', '24-35', '36-48']);
  });

  it('stay dates where nothing goes on from there', () => {
    const text = table(
      'File | Low | High | Velocity',
      'a.wav | 60 | 63 | 24-Jan',
      'b.wav | 60 | 63 | 40-90',
      'c.wav | 60 | 63 | 91-127',
    );
    expect(regions(text)[0]).not.toHaveProperty('hivel');
    expect(notesOf(text).join()).toContain('"24-Jan" is not a velocity');
  });
});
