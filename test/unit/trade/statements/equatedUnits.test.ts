import { describe, expect, it } from 'vitest';
import { scaleOf } from '../../../../server/trade/statements/statedScales';

describe('units beside an example of one value', () => {
  it.each([
    ['bend: semitones, 0.07 = seven cents up', 'semitones'],
    ['bend: 0.05 = five cents', 'semitones'],
    ['bend: 0,5 = 50 cents', 'semitones'],
    ['bend in cents, 100 = one semitone', 'cents'],
    ['bend: 100 = one semitone', 'cents'],
    ['bend: 1 = 1 cent', 'cents'],
  ])('of tunings: %s', (text, unit) => {
    expect(scaleOf(text, ['tune'])?.unit).toBe(unit);
  });

  it.each([
    ['force: 1 = 0 dB', 'linear', undefined],
    ['force: 100 = 0 dB', undefined, 100],
    ['force in dB, 0 = unchanged', 'dB', undefined],
  ])('of levels: %s', (text, unit, high) => {
    const scale = scaleOf(text, ['volume']);
    expect(scale?.unit).toBe(unit);
    if (high !== undefined) expect(scale?.high).toBe(high);
  });
});
