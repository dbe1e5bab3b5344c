import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

/** Two zones with `name` beside their keys, behind what the text says elsewhere. */
const zones = (around: string, name: string, first: string, second: string) => `<set>${around}
  <zone file="a.wav" low="43" high="50" root="48" ${name}="${first}"/>
  <zone file="b.wav" low="51" high="57" root="55" ${name}="${second}"/>
</set>`;

// A semitone of equal temperament is 100 cents (A. J. Ellis, 1885).
describe('units in words behind numbers', () => {
  it.each([
    ['-6 centów', '+4 centy'],
    ['-6 centow', '4 centy'],
    ['-6,0 centésimas de semitono', '4,0 centésimas de semitono'],
    ['-6 centièmes de demi-ton', '4 centièmes de demi-ton'],
    ['-6 centesimi di semitono', '4 centesimi di semitono'],
    ['-6 Hundertstel Halbton', '4 Hundertstel Halbton'],
    ['-6 hundredths of a semitone', '+4 hundredths of a semitone'],
    ['-6 honderdsten van een halve toon', '4 honderdsten van een halve toon'],
  ])('are read in any form, as in "%s" and "%s"', (first, second) => {
    expect(valuesIn(zones('', 'tune', first, second), 'tune')).toEqual(['-6', '4']);
  });
});

describe('parts of a unit', () => {
  it.each([
    ['<!-- tune: 64ths of a semitone -->', '-16', '32', '-25', '50'],
    ['<!-- tune counts in 1/128 of a semitone -->', '-64', '32', '-50', '25'],
    ['<!-- tune: in Fünfzigsteln eines Halbtons -->', '-10', '25', '-20', '50'],
    [
      '<legend><item field="tune">64ths of a semitone, positive = sharper</item><item field="low">lowest key</item></legend>',
      '-16',
      '8',
      '-25',
      '12.5',
    ],
    ['<légende><champ nom="tune" unité="64es de demi-ton"/></légende>', '-16', '8', '-25', '12.5'],
  ])('count so where the text says it: %s', (around, first, second, ...cents) => {
    expect(valuesIn(zones(around, 'tune', first, second), 'tune')).toEqual(cents);
  });

  it('are those of the place that a legend names', () => {
    const legend =
      '<legend><entry name="trim">tenths of a dB</entry><entry name="low">lowest key</entry></legend>';
    expect(valuesIn(zones(legend, 'trim', '-25', '10'), 'volume')).toEqual(['-2.5', '1']);
  });
});

// 20 · log10 of the share of the amplitude (IEC 60027-3); that the numbers are such shares is our choice, and told.
describe('names that end with the greatest number of their scale', () => {
  it.each([
    ['vol127', '127', '64', -5.95],
    ['volume0_127', '127', '64', -5.95],
    ['lautstärke127', '127', '64', -5.95],
    ['gain255', '255', '128', -5.99],
    ['level100', '80', '50', -6.02],
  ])('are read as levels of that scale: %s', (name, first, second, decibels) => {
    const [, level] = valuesIn(zones('', name, first, second), 'volume');
    expect(Number(level)).toBeCloseTo(decibels, 1);
  });

  it('is told where no curve is named', () => {
    const { decisions } = readInferred(zones('', 'vol127', '100', '64'));
    expect(
      decisions.some(({ isGuess, evidence }) => isGuess && /No curve is named/.test(evidence.join())),
    ).toBe(true);
  });

  it('are positions of the pan in percent', () => {
    expect(valuesIn(zones('', 'panPct', '-50', '50'), 'pan')).toEqual(['-50', '50']);
  });

  it('are read in Polish without its letters', () => {
    expect(valuesIn(zones('', 'glosnosc', '-2 dB', '1 dB'), 'volume')).toEqual(['-2', '1']);
  });
});
