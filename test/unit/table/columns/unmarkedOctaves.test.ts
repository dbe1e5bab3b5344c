import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

/** The keys of all regions, one string a region. */
function keys(text: string): string[] {
  return regions(text).map(
    ({ lokey = '-', hikey = '-', pitch_keycenter = '-' }) => `${lokey} ${hikey} ${pitch_keycenter}`,
  );
}

// In the German and Slavic manner the small octave has no mark and the one above starts with c1, middle C (common practice).
describe('notes of the small octave without a mark', () => {
  it.each([
    ['Czech', 'soubor;od;do;základní tón'],
    ['Polish', 'Plik;Od;Do;Dźwięk podstawowy'],
    ['Polish, in other words', 'Plik;Najniższy;Najwyższy;Podstawowy'],
    ['Danish', 'Fil;Fra;Til;Grundtone'],
    ['Finnish', 'Tiedosto;Alin;Ylin;Perussävel'],
    ['Hungarian', 'Fájl;Alsó;Felső;Alaphang'],
  ])('under %s headings', (_, heading) => {
    const rows = [heading, 'a.wav;g;cis1;h', 'b.wav;d1;f1;e1', 'c.wav;fis1;a1;g1'];
    expect(keys(rows.join('\n'))).toEqual(['55 61 59', '62 65 64', '66 69 67']);
  });

  it('are none where no other has a mark', () => {
    expect(keys('soubor;od;do;typ\na.wav;48;52;g\nb.wav;53;57;h')).toEqual(['48 52 -', '53 57 -']);
  });
});
