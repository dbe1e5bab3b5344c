import { describe, expect, it } from 'vitest';
import { notesOf, regions } from './tableRegions';

describe('two values in one clause that a word joins', () => {
  const values = (text: string) => regions(text).map(({ tune, volume }) => [tune, volume]);

  it.each([
    ['tuned up by 6 cents and 2 dB louder', 'tuned down by 3 cents and 1.5 dB quieter'],
    ['2 dB louder and tuned up by 6 cents', '1.5 dB quieter and tuned down by 3 cents'],
  ])('are both read: %s', (one, other) => {
    const text = `One.wav covers E1 to G1, its root is F1, ${one}.\nTwo.wav covers G#1 to B1, its root is A1, ${other}.\n`;
    expect(values(text)).toEqual([
      ['6', '2'],
      ['-3', '-1.5'],
    ]);
  });

  it('are both read in German', () => {
    const text = [
      'Eins.wav liegt auf E1 bis G1, Grundton F1, um 6 Cent höher und 2 dB lauter.',
      'Zwei.wav liegt auf Gis1 bis H1, Grundton A1, um 3 Cent tiefer und 1,5 dB leiser.',
    ].join('\n');
    expect(regions(text).map(({ volume }) => volume)).toEqual(['2', '-1.5']);
  });

  it('and a root beside an amount is not lost', () => {
    const text = [
      'One.wav covers E1 to G1, its root is F1 and it is 2 dB quieter.',
      'Two.wav covers G#1 to B1, its root is A1 and 3 dB louder.',
    ].join('\n');
    expect(regions(text).map(({ pitch_keycenter, volume }) => [pitch_keycenter, volume])).toEqual([
      ['29', '-2'],
      ['33', '3'],
    ]);
  });
});

it('reads a tuning on one line and how far a sample is off on another, and says so', () => {
  const text = [
    'One.wav covers E1 to G1, its root is F1, tuned down by 4 cents.',
    'Two.wav covers G#1 to B1, its root is A1, 6 cents sharp.',
    'Three.wav covers C2 to E2, its root is D2, 5 cents flat.',
  ].join('\n');
  // A sample that sounds 6 cents too high is tuned down by 6 cents.
  expect(regions(text).map(({ tune }) => tune)).toEqual(['-4', '-6', '5']);
  expect(notesOf(text).join('\n')).toMatch(/"6 cents sharp" says how far the sample is off pitch/);
});

describe('notes in a row before a named root', () => {
  it.each([
    ['my program calls middle C "C3"', 60],
    ['Bei mir heißt das mittlere C "C3".', 60],
    ['Nothing is said here.', 48],
  ])('are its range, also among quoted lines of a message: %s', (said, low) => {
    const text = [
      'Re: the samples',
      '',
      'Somebody wrote:',
      `> ${said}`,
      '> gut1.wav C3-E3 root D3',
      '> gut2.wav F3-A3 root G3',
      '',
      'Thanks, fine!',
    ].join('\n');
    expect(regions(text)).toMatchObject([
      { sample: 'gut1.wav', lokey: String(low), hikey: String(low + 4), pitch_keycenter: String(low + 2) },
      {
        sample: 'gut2.wav',
        lokey: String(low + 5),
        hikey: String(low + 9),
        pitch_keycenter: String(low + 7),
      },
    ]);
  });
});
