import { describe, expect, it } from 'vitest';
import { lackOfZoneTable } from '../../../server/table/looksLikeZoneTable';
import { regions } from './tableRegions';

const roots = (text: string) => regions(text).map(({ pitch_keycenter, tune }) => [pitch_keycenter, tune]);

// Equal temperament at A4 = 440 Hz: key 50 is 146.83 Hz, 57 is 220 Hz, 62 is 293.66 Hz.
describe('a bare list of files and frequencies', () => {
  it.each([
    ['far apart', 'ocarina1.wav   146.83 Hz\nocarina2.wav   220 Hz\nocarina3.wav   293.66 Hz'],
    ['a blank apart', 'ocarina1.wav 146.83 Hz\nocarina2.wav 220 Hz\nocarina3.wav 293.66 Hz'],
    ['with a sign between', 'ocarina1.wav = 146.83 Hz\nocarina2.wav = 220 Hz\nocarina3.wav = 293.66 Hz'],
    ['with the frequency first', '146.83 Hz   ocarina1.wav\n220 Hz   ocarina2.wav\n293.66 Hz   ocarina3.wav'],
    ['with decimal commas', 'ocarina1.wav\t146,83 Гц\nocarina2.wav\t220 Гц\nocarina3.wav\t293,66 Гц'],
  ])('%s gives roots, which share the keys out', (_, text) => {
    expect(lackOfZoneTable(text)).toBeUndefined();
    expect(roots(text)).toEqual([
      ['50', undefined],
      ['57', undefined],
      ['62', undefined],
    ]);
    expect(regions(text).map(({ lokey, hikey }) => `${lokey}-${hikey}`)).toEqual(['0-53', '54-59', '60-127']);
  });

  it('may give measured pitches beside the keys', () => {
    expect(roots('reed a.wav   148.1 Hz\nreed b.wav   221.7 Hz')).toEqual([
      ['50', '-15'],
      ['57', '-13'],
    ]);
  });

  it.each([
    ['rates', 'a1.wav   44100 Hz\na2.wav   48000 Hz\na3.wav   44100 Hz'],
    ['round numbers of no keys', 'a1.wav   800 Hz\na2.wav   1200 Hz\na3.wav   500 Hz'],
    ['filters', 'Low-pass filters of the pads\n\na1.wav   800.5 Hz\na2.wav   1200.5 Hz\na3.wav   500.5 Hz'],
  ])('gives none by %s', (_, text) => {
    expect(lackOfZoneTable(text)).toMatch(/no keys/);
  });
});
