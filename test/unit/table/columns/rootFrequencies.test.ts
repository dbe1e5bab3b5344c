import { describe, expect, it } from 'vitest';
import { regions, table } from '../tableRegions';

// A key k has 440 · 2^((k − 69) / 12) Hz (equal temperament, ISO 16: A of 440 Hz).
const roots = (text: string) => regions(text).map((region) => region.pitch_keycenter);

describe('roots as frequencies', () => {
  it.each([
    'Freq. di riferimento (Hz)',
    'Frequenz Grundton Hz',
    'fréquence de base (Hz)',
    'Base freq',
    'fundamental [Hz]',
    'F0',
    'Root Hz',
    'Základní frekvence (Hz)',
    'Częstotliwość podstawowa (Hz)',
    'основная частота, Гц',
    'Hz',
    '周波数 (Hz)',
  ])('%s', (heading) => {
    const text = table(
      `File | Low | High | ${heading}`,
      'a.wav | 40 | 46 | 110',
      'b.wav | 47 | 54 | 164,81',
      'c.wav | 55 | 62 | 246,94',
    );
    expect(roots(text)).toEqual(['45', '52', '59']);
  });

  it('takes each unit that stands in a cell, and what the frequency lacks to the key as tuning', () => {
    const text = table(
      'sample | lo | hi | pitch',
      'a.wav | 60 | 70 | 440 Hz',
      'b.wav | 71 | 83 | 1.0465 kHz',
      'c.wav | 84 | 96 | 1,76 kHz',
      'd.wav | 97 | 100 | 2200 Hz',
    );
    // 2200 Hz lie 14 cents below the 2217.46 Hz of key 97.
    expect(regions(text).map(({ pitch_keycenter, tune }) => [pitch_keycenter, tune])).toEqual([
      ['69', undefined],
      ['84', undefined],
      ['93', undefined],
      ['97', '14'],
    ]);
  });

  it('reads a column in kHz', () => {
    const text = table(
      'sample | lo | hi | fundamental (kHz)',
      'a.wav | 60 | 70 | 0.44',
      'b.wav | 71 | 83 | 0.88',
    );
    expect(roots(text)).toEqual(['69', '81']);
  });

  it('tells by the frequencies which octave the names of notes count', () => {
    const text = table(
      'sample | from note | to note | base frequency (Hz)',
      'a.wav | C3 | F3 | 261.63',
      'b.wav | F#3 | B3 | 392',
    );
    expect(regions(text).map(({ lokey, pitch_keycenter }) => [lokey, pitch_keycenter])).toEqual([
      ['60', '60'],
      ['66', '67'],
    ]);
  });

  it.each(['Cutoff (Hz)', 'Filter frequency', 'LFO Hz', 'Grenzfrequenz (Hz)', 'frequenza di taglio (Hz)'])(
    'does not take frequencies of other things: %s',
    (heading) => {
      const text = table(
        `File | Low | High | ${heading}`,
        'a.wav | 40 | 46 | 110',
        'b.wav | 47 | 54 | 164.81',
        'c.wav | 55 | 62 | 246.94',
      );
      expect(roots(text)).toEqual([undefined, undefined, undefined]);
    },
  );

  it('takes no frequencies that are far from the keys', () => {
    const text = table(
      'File | Low | High | Strongest partial (Hz)',
      'a.wav | 36 | 40 | 1200',
      'b.wav | 41 | 45 | 3000',
      'c.wav | 46 | 50 | 5000',
    );
    expect(roots(text)).toEqual([undefined, undefined, undefined]);
  });
});
