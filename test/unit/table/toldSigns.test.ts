import { expect, it } from 'vitest';
import { regions } from './tableRegions';

const rows = (heading: string) =>
  `File\tLow\tHigh\tRoot\t${heading}\nvat_a.wav\t20\t24\t22\t4\nvat_b.wav\t25\t29\t27\t3\n`;

// The sentences are plain ones of each language, from memory.
it.each([
  '4 means 4 dB quieter.',
  'Pozor: 4 znamená o 4 dB tišeji.',
  '4 oznacza 4 dB ciszej.',
  '4 betyder 4 dB svagare.',
])('an example says that levels count down: %s', (sentence) => {
  expect(regions(`${sentence}\n\n${rows('dB')}`).map(({ volume }) => volume)).toEqual(['-4', '-3']);
});

it.each([
  ['+4 means the recording is 4 cents sharp.', ['-4', '-3']],
  ['+4 heißt: die Aufnahme ist 4 Cent zu hoch.', ['-4', '-3']],
  ['+4 means the zone is tuned 4 cents sharp.', ['4', '3']],
])('an example says how far recordings are off: %s', (sentence, tunes) => {
  expect(regions(`${sentence}\n\n${rows('cents')}`).map(({ tune }) => tune)).toEqual(tunes);
});

it('numbers in brackets that count entries are no part of them', () => {
  const entries = [0, 1, 2].map(
    (at) => `[${at}] file="vat_${at}.wav" low=${50 + 5 * at} high=${54 + 5 * at} root=${52 + 5 * at}`,
  );
  expect(regions(entries.join('\n')).map(({ sample, lokey }) => [sample, lokey])).toEqual([
    ['vat_0.wav', '50'],
    ['vat_1.wav', '55'],
    ['vat_2.wav', '60'],
  ]);
});

it('values that stand apart on a line are not joined', () => {
  const text = 'vat_a.wav   root 31   up to 33\nvat_b.wav   root 36   up to 38\n';
  expect(regions(text).map(({ pitch_keycenter: root, hikey, end }) => [root, hikey, end])).toEqual([
    ['31', '33', undefined],
    ['36', '38', undefined],
  ]);
});
