import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const zones = (text: string) =>
  regions(text).map(({ sample = '', lokey, hikey, pitch_keycenter, lovel = '1', hivel = '127', volume }) =>
    [sample, `${lokey}-${hikey}`, pitch_keycenter, `${lovel}-${hivel}`, volume].filter(Boolean).join(' '),
  );
const wanted = [
  'gong1.wav 40-44 43 1-50',
  'gong2.wav 40-44 43 51-127',
  'gong3.wav 45-49 46 1-33',
  'gong4.wav 45-49 46 34-127',
];
const list = (first: string, second: string, upTo: (velocity: number) => string) =>
  table(
    'small gongs',
    '',
    first,
    `   gong1.wav   ${upTo(50)}`,
    `   gong2.wav   ${upTo(127)}`,
    second,
    `   gong3.wav   ${upTo(33)}`,
    `   gong4.wav   ${upTo(127)}`,
  );

describe('a list with titles for keys and upper ends of velocities', () => {
  it.each([
    ['G2 (43)  keys 40-44', 'A#2 (46)  keys 45-49', 'up to '],
    ['G2: 40-44', 'A#2: 45-49', 'up to '],
    ['43 (G2): keys 40-44', '46 (A#2): keys 45-49', 'vel up to '],
    ['keys 40-44, root 43', 'keys 45-49, root 46', '<= '],
    ['Tasten 40-44 (Grundton 43)', 'Tasten 45-49 (Grundton 46)', 'bis '],
    ['G2 (43), touches 40-44', 'A#2 (46), touches 45-49', "jusqu'\u00e0 "],
    ['G2 (43) teclas 40-44', 'A#2 (46) teclas 45-49', 'hasta '],
  ])('is read under %s', (first, second, upTo) => {
    expect(zones(list(first, second, (velocity) => upTo + velocity))).toEqual(wanted);
  });

  it('says what it takes from titles and ends', () => {
    const notes = notesOf(
      list('G2 (43)  keys 40-44', 'A#2 (46)  keys 45-49', (one) => `up to ${one}`),
    ).join();
    expect(notes).toMatch(/Titles such as "G2 \(43\) {2}keys 40-44" give the keys/);
    expect(notes).toMatch(/"up to 50" and the like are the upper ends of velocities/);
  });

  it('takes lower ends and other values too', () => {
    const text = table(
      'velocities from below',
      'G2 (43)  keys 40-44',
      '  gong1.wav  from 1, -3 dB',
      '  gong2.wav  from 51',
      'A#2 (46)  keys 45-49',
      '  gong3.wav  from 1',
      '  gong4.wav  from 34',
    );
    expect(zones(text)).toEqual([`${wanted[0]} -3`, ...wanted.slice(1)]);
  });

  it('takes ends for no velocities that neither the text nor the numbers say are some', () => {
    const text = list('G2 (43)  keys 40-44', 'A#2 (46)  keys 45-49', (one) => `up to ${Math.min(one, 60)}`);
    expect(notesOf(text).join()).not.toMatch(/ends of velocities/);
  });
});
