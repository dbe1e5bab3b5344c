import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const tuned = (said: string, heading = 'Fine') =>
  `${said}\n\n${table(
    `File | Low | High | Root | ${heading}`,
    'harp_40.wav | 38 | 41 | 40 | 0',
    'harp_43.wav | 42 | 45 | 43 | 16',
    'harp_47.wav | 46 | 50 | 47 | -24',
  )}`;

const tunesOf = (text: string) => regions(text).map(({ tune }) => Number(tune ?? 0));

// A semitone is 100 cents: of 64 parts 16 are a quarter of it.
describe('tunings in parts of a semitone', () => {
  it.each([
    ['Fine is in 64ths of a semitone.', 'Fine'],
    ['Fine counts 1/64 semitone, everything else is plain.', 'Fine'],
    ['FINE tuning is given in 64ths of a semitone (32 is half of one).', 'Fine tune'],
    ['Feinstimmung in 1/64 Halbton.', 'Feinstimmung'],
    ['Feinstimmung in 64stel Halbton.', 'Feinstimmung'],
    ['Accord fin en 64èmes de demi-ton.', 'Accord fin'],
    ['Afinación en 64avos de semitono.', 'Afinación'],
    ['Accordatura in 64esimi di semitono.', 'Accordatura'],
    ['Fine: 64 steps per semitone.', 'Fine'],
    ['FINE has 64 units to the semitone.', 'Fine'],
    ['Fine: 64 = one semitone', 'Fine'],
    ['Fine values: +64 = +1 semitone', 'Fine'],
    ['Feinstimmung: 64 Schritte pro Halbton', 'Feinstimmung'],
    ['Copied from the display.', 'Fine (1/64 semitone)'],
  ])('are divided: %s', (said, heading) => {
    const text = tuned(said, heading);
    expect(tunesOf(text)).toEqual([0, 25, -37.5]);
    expect(notesOf(text).join('\n')).toMatch(/are divided by 64 to give semitones/);
  });

  it('are added to whole semitones of another column', () => {
    const rows = table(
      'File | Low | High | Root | Coarse | Fine',
      'harp_40.wav | 38 | 41 | 40 | 0 | 0',
      'harp_43.wav | 42 | 45 | 55 | -12 | 128',
      'harp_47.wav | 46 | 50 | 47 | +1 | -192',
    );
    const text = `Coarse is in semitones. Fine is in 256ths of a semitone (so 128 is half a semitone).\n\n${rows}`;
    const cents = regions(text).map(
      ({ tune, transpose }) => Number(transpose ?? 0) * 100 + Number(tune ?? 0),
    );
    expect(cents).toEqual([0, -1150, 25]);
  });

  it('leave cells with a unit of their own as they are', () => {
    const text = tuned('Fine is in 64ths of a semitone.').replace('\t16', '\t16 cents');
    expect(tunesOf(text)).toEqual([0, 16, -37.5]);
  });

  it('are cents where a semitone has a hundred of them', () => {
    expect(tunesOf(tuned('Fine is in hundredths of a semitone.'))).toEqual([0, 16, -24]);
  });
});

describe('levels in parts of a dB', () => {
  const rows = (heading: string) =>
    table(
      `File | Low | High | Root | ${heading}`,
      'harp_40.wav | 38 | 41 | 40 | 0',
      'harp_43.wav | 42 | 45 | 43 | -6',
      'harp_47.wav | 46 | 50 | 47 | -10',
    );
  it.each([
    ['Level is in quarters of a dB.', 'Level', [0, -1.5, -2.5]],
    ['The level counts 1/8 dB.', 'Level', [0, -0.75, -1.25]],
    ['Pegel in viertel dB.', 'Pegel', [0, -1.5, -2.5]],
    ['As copied.', 'Level (1/4 dB)', [0, -1.5, -2.5]],
    ['Level is in tenths of a dB.', 'Level', [0, -0.6, -1]],
  ])('are divided: %s', (said, heading, levels) => {
    const found = regions(`${said}\n\n${rows(heading)}`).map(({ volume }) => Number(volume ?? 0));
    expect(found).toEqual(levels);
  });
});

describe('loops in parts of a second', () => {
  it('are divided', () => {
    const rows = table(
      'File | Low | High | Root | Loop start | Loop end',
      'harp_40.wav | 38 | 41 | 40 | 5 | 30',
      'harp_43.wav | 42 | 45 | 43 | 10 | 25',
    );
    const text = `Loop points are in tenths of a second.\n\n${rows}`;
    const found = regions(text, { rateOf: () => 44_100 });
    expect(found.map((one) => [one.loop_start, one.loop_end])).toEqual([
      ['22050', '132300'],
      ['44100', '110250'],
    ]);
  });
});
