import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

/** The keys of all regions, one string a region. */
function keys(text: string): string[] {
  return regions(text).map(
    ({ lokey = '-', hikey = '-', pitch_keycenter = '-' }) => `${lokey} ${hikey} ${pitch_keycenter}`,
  );
}

const expected = ['48 52 50', '53 57 55', '58 62 60'];
const lines = ['a.wav;48;52;50', 'b.wav;57;53;55', 'c.wav;58;62;60'];

// People mix up the ends of a range now and then (common practice); on most rows they stand as they should, and the root tells the rest.
describe('rows whose low key is above the high one', () => {
  it.each([
    ['no headings', []],
    ['headings of no known language', ['Gxx;Zq;Zr;Zs']],
    ['Croatian headings', ['Datoteka;Od;Do;Osnovni ton']],
    ['Czech headings', ['soubor;od;do;základní tón']],
    ['Polish headings', ['Plik;Od;Do;Dźwięk podstawowy']],
    ['French headings', ['Fichier;de;à;tonique']],
    ['English headings, of which the root is not known', ['File;From key;To key;Where it lies']],
  ])('are put in order and noted under %s', (_, heading) => {
    const text = [...heading, ...lines].join('\n');
    expect(keys(text)).toEqual(expected);
    expect(notesOf(text).join('\n')).toMatch(/the low key 57 is above the high key 53; the two are swapped/);
  });

  it('as names of notes', () => {
    const text = 'Datoteka;Od;Do;Osnovni ton\na.wav;C3;E3;D3\nb.wav;A3;F3;G3\nc.wav;A#3;D4;C4';
    expect(keys(text)).toEqual(expected);
  });

  it('with a greeting behind the table that has a comma', () => {
    const text = [
      'Datoteka,Od,Do,Osnovni ton',
      ...lines.map((line) => line.replaceAll(';', ',')),
      '',
      'Pozdrav, Mara',
    ].join('\n');
    expect(keys(text)).toEqual(expected);
    expect(notesOf(text).join('\n')).toMatch(/Line 6 is no zone/);
  });
});
