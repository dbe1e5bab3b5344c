import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

/** Three zones with numbers around 1 under a heading. */
const speeds = (heading: string, numbers = ['1.005793', '0.998268', '1']) =>
  table(
    `File | Low | High | Root | ${heading}`,
    ...numbers.map(
      (number, at) => `comb_${at}.wav | ${40 + 10 * at} | ${49 + 10 * at} | ${45 + 10 * at} | ${number}`,
    ),
  );
const tunes = (text: string) =>
  regions(text).map(({ tune, transpose }) => `${transpose ?? ''}/${tune ?? ''}`);

// A sample that plays r times as fast sounds 1200 · log2(r) cents higher (ISO 80000-8): 2^(10/1200) = 1.005793.
describe('how many times as fast samples play', () => {
  it.each([
    'playback speed',
    'Speed (x)',
    'play rate',
    'Rate',
    'Pitch ratio',
    'frequency factor',
    'Abspielgeschwindigkeit',
    'Tonhöhenfaktor',
    'vitesse de lecture',
    'Velocidad de reproducción',
    'velocità di riproduzione',
    'fattore di velocità',
    'factor de velocidad',
    'afspeelsnelheid',
    'uppspelningshastighet',
    'скорость',
    '再生速度',
  ])('is their tuning: %s', (heading) => {
    expect(tunes(speeds(heading))).toEqual(['/10', '/-3', '/']);
    expect(notesOf(speeds(heading)).join()).toMatch(/how many times as fast samples play/);
  });

  it('moves by whole semitones too', () => {
    expect(tunes(speeds('speed', ['2', '0.5', '1.122462']))).toEqual(['12/', '-12/', '2/']);
  });

  it.each(['tape speed', 'vibrato speed', 'Sample rate', 'ratio', 'Speed of recording', 'Bow speed'])(
    'is something else under %s, which is not used',
    (heading) => {
      expect(tunes(speeds(heading))).toEqual(['/', '/', '/']);
      expect(notesOf(speeds(heading)).join()).toMatch(/is not used/);
    },
  );

  it('is no tuning where the numbers are none that samples play at', () => {
    for (const numbers of [
      ['72.5', '80', '91'],
      ['0.2', '0.5', '0.9'],
    ])
      expect(tunes(speeds('speed', numbers))).toEqual(['/', '/', '/']);
  });
});
