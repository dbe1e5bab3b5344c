import { expect, it } from 'vitest';
import { regions } from './tableRegions';

// A bel is ten decibels, a decibel ten centibels (ISO 80000-3:2006, annex C, from memory).
it.each([
  ['level in tenths of a dB', '-15', '-1.5'],
  ['attenuation in tenths of a dB', '15', '-1.5'],
  ['Pegel in Zehntel dB', '-15', '-1.5'],
])('a level counted in parts of a decibel: %s', (heading, written, volume) => {
  const text = `File\tLow\tHigh\tRoot\t${heading}\nvat_a.wav\t20\t24\t22\t0\nvat_b.wav\t25\t29\t27\t${written}\n`;
  expect(regions(text)[1]).toMatchObject({ volume });
});
