import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const lines = (said: string, heading: string, ...cells: string[]) =>
  [
    said,
    table(`File | Key | ${heading}`, ...cells.map((cell, at) => `fife${at}.wav | ${70 + at} | ${cell}`)),
  ].join('\n');
const levels = (text: string) => regions(text).map(({ volume }) => Number(volume ?? 0));

describe('levels that a text says to be by how much samples are quieter', () => {
  it.each([
    ['Levels are dB of attenuation.', 'Level'],
    ['Gain column = attenuation in dB', 'Gain'],
    ['Level: dB quieter than the loudest take.', 'Level'],
    ['Gain is in dB, positive means quieter.', 'Gain'],
    ['Volume in dB (minus signs left out)', 'Volume'],
    ['Levels are dB below full scale', 'Level'],
    ['Level in dB: 5 = 5 dB quieter', 'Level'],
    ['Pegel in dB Abschwächung', 'Pegel'],
    ['Pegel in dB, ohne Minuszeichen', 'Pegel'],
    ['Les niveaux sont des dB d’atténuation', 'Niveau'],
    ['Niveles en dB de atenuación', 'Nivel'],
    ['Livelli in dB di attenuazione', 'Livello'],
  ])('%s', (said, heading) => {
    const text = lines(said, heading, '2', '5.5');
    expect(levels(text)).toEqual([-2, -5.5]);
    expect(notesOf(text).join('\n')).toMatch(/by how much samples are quieter/);
  });

  it('are turned round in a heading too', () => {
    expect(levels(lines('', 'Level (dB below peak)', '2', '5.5'))).toEqual([-2, -5.5]);
    expect(levels(lines('', 'Below max (dB)', '2', '5.5'))).toEqual([-2, -5.5]);
  });

  it('keep their own signs, which is noted', () => {
    const text = lines('Levels are dB of attenuation.', 'Level (dB)', '-2', '1');
    expect(levels(text)).toEqual([-2, 1]);
    expect(notesOf(text).join('\n')).toMatch(/with their own signs/);
  });

  it.each(['Levels are in dB, not an attenuation.', 'Level in dB, positive means louder.'])(
    'are not meant by: %s',
    (said) => {
      expect(levels(lines(said, 'Level (dB)', '2', '5.5')).every((level) => level >= 0)).toBe(true);
    },
  );
});
