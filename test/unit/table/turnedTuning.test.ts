import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

/** The tunings of two samples under a heading, with a sentence above. */
function tunings(said: string, heading: string): (string | undefined)[] {
  const rows = table(
    `File | Low | High | Root | ${heading}`,
    'a.wav | 40 | 45 | 43 | +7',
    'b.wav | 46 | 49 | 48 | -3',
  );
  return regions(`${said}\n\n${rows}`).map(({ tune }) => tune);
}

// A sample that is too high by some cents is tuned down by as many (common practice).
describe('a column that says how far samples are off pitch', () => {
  it.each([
    ['Tune is how many cents the sample is sharp.', 'Tune'],
    ['The tuning column holds the measured error: negate it when you enter it.', 'Tuning'],
    ['Die Spalte sagt, wie weit die Aufnahme verstimmt ist. Vorzeichen umdrehen!', 'Verstimmung'],
    ["L'accordage donne l'écart de l'échantillon; appliquer en sens inverse.", 'Accordage'],
    ['Afinación: corregir en sentido contrario.', 'Afinación'],
    ['Accordatura: applicare con segno opposto.', 'Accordatura'],
    ['Stemming met omgekeerd teken invoeren.', 'Stemming'],
    ['Ladění zadávejte s opačným znaménkem.', 'Ladění'],
    ['', 'Tune (cents, sign inverted)'],
    ['', 'Cents sharp'],
    ['', 'Cent zu hoch'],
  ])('is turned round: "%s" over "%s"', (said, heading) => {
    expect(tunings(said, heading)).toEqual(['-7', '3']);
  });

  it.each([
    ['Some samples were flat; the Tune column corrects that.', 'Tune'],
    ['There is no need to invert the sign of the tuning.', 'Tune'],
    ['The sign of the tuning is already inverted.', 'Tune'],
    ['Tune in cents. Pan is the opposite of what the player hears.', 'Tune'],
    ['', 'Cents flat'],
  ])('is left as it is: "%s" over "%s"', (said, heading) => {
    expect(tunings(said, heading)).toEqual(['7', '-3']);
  });

  it('is told', () => {
    const rows = table('File | Key | Tune', 'a.wav | 40 | 7');
    expect(notesOf(`Tune: with the opposite sign.\n\n${rows}`).join()).toMatch(
      /"Tune" is written with the other sign, as "Tune: with the opposite sign\." says/,
    );
  });
});
