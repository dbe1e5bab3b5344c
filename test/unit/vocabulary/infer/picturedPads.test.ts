import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

describe('elements with a picture', () => {
  it.each([
    ['takes', (file: string) => `<takes><take>${file}</take></takes>`],
    ['sounds', (file: string) => `<sounds><sound><wave href="${file}"/></sound></sounds>`],
  ])('are read where they name keys and hold files: <%s>', (_, inner) => {
    const drum = (key: number, picture: string) =>
      `<drum key="${key}" ${picture}>${inner(`d${key}.wav`)}</drum>`;
    const text = `<kit>${drum(36, 'icon="a.png"')}${drum(38, '')}${drum(40, 'icon="b.svg"')}</kit>`;
    expect(valuesIn(text, 'sample', 'lokey', 'hikey')).toEqual([
      'd36.wav 36 36',
      'd38.wav 38 38',
      'd40.wav 40 40',
    ]);
  });
});

describe('names of values with a unit in brackets', () => {
  it.each([
    ['Level (dB)', 'Key from', 'Key to', 'File'],
    ['Pegel (dB)', 'Taste von', 'Taste bis', 'Datei'],
    ['Niveau (dB)', 'Touche de', 'Touche à', 'Fichier'],
  ])('tell elements apart: %s', (level, low, high, file) => {
    const zone = (key: number, db: string) =>
      `<zone><set name="${file}" value="z${key}.wav"/><set name="${low}" value="${key}"/><set name="${high}" value="${key + 6}"/><set name="${level}" value="${db}"/></zone>`;
    const text = `<organ>${zone(40, '-1,5')}${zone(47, '0')}${zone(54, '2')}</organ>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'volume')).toEqual(['40 46 -1.5', '47 53 0', '54 60 2']);
  });
});
