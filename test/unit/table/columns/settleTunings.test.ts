import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

/** The tunings of a table in cents, whole semitones among them. */
function cents(first: string, second: string, ...rows: readonly (readonly [string, string])[]): number[] {
  return regions(tuned(first, second, ...rows)).map(
    ({ tune, transpose }) => Number(tune ?? 0) + 100 * Number(transpose ?? 0),
  );
}

function tuned(first: string, second: string, ...rows: readonly (readonly [string, string])[]): string {
  const zones = rows.map(
    ([one, other], at) => `h${at}.wav;${30 + 4 * at};${33 + 4 * at};${31 + 4 * at};${one};${other};-1`,
  );
  return [`File;Low;High;Root;${first};${second};Volume (dB)`, ...zones].join('\n');
}

const rows: readonly (readonly [string, string])[] = [
  ['0', '-2,5'],
  ['1', '6'],
  ['-2', '-3'],
];

// A semitone is 100 cents (ISO 80000-8).
describe('two columns of tuning add up', () => {
  it.each([
    ['Tuning (semitones)', 'Tuning (cents)'],
    ['Pitch coarse', 'Pitch fine'],
    ['Tune semi', 'Tune fine'],
    ['tune_semitones', 'tune_cents'],
    ['Detune [st]', 'Detune [ct]'],
    ['Transpose (semitones)', 'Transpose (cents)'],
    ['Verstimmung (Halbtöne)', 'Verstimmung (Cent)'],
    ['Accord (demi-tons)', 'Accord fin (cents)'],
    ['Afinación (semitonos)', 'Afinación (cents)'],
    ['Intonazione (semitoni)', 'Intonazione fine (cent)'],
    ['Stemming (halve tonen)', 'Fijn (cent)'],
    ['Strojenie (półtony)', 'Strojenie (centy)'],
    ['Ladění (půltóny)', 'Jemné ladění (centy)'],
    ['Строй (полутоны)', 'Строй (центы)'],
    ['Stämning (halvtoner)', 'Stämning (cent)'],
    ['Viritys (puoliaskelta)', 'Viritys (senttiä)'],
    ['チューニング（半音）', '微調整（セント）'],
    ['튜닝 (반음)', '미세 튜닝 (센트)'],
    ['Tuning', 'Fine tuning (cents)'],
    ['Tuning', 'Fine tuning'],
  ])('"%s" and "%s"', (coarse, fine) => {
    const turned = rows.map(([one, other]) => [other, one] as const);
    expect(cents(coarse, fine, ...rows)).toEqual([-2.5, 106, -203]);
    expect(cents(fine, coarse, ...turned)).toEqual([-2.5, 106, -203]);
  });

  it('takes parts of one for semitones beside whole ones', () => {
    expect(cents('Tune (semitones)', 'Fine', ['1', '0.25'], ['0', '-0.5'])).toEqual([125, -50]);
  });

  it('adds cents to cents where one is named the fine one', () => {
    expect(cents('Tuning (cents)', 'Fine tuning (cents)', ['100', '4'], ['0', '-3'])).toEqual([104, -3]);
  });

  it('tells what is taken for semitones without a unit', () => {
    expect(notesOf(tuned('Tuning', 'Fine tuning', ...rows)).join()).toMatch(/taken for whole semitones/);
  });

  it('tells what is not used where nothing says which is which', () => {
    expect(notesOf(tuned('Tuning', 'Tune', ['0.5', '7'], ['12', '3'])).join()).toMatch(/is not used/);
  });
});
