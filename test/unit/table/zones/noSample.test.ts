import { describe, expect, it } from 'vitest';
import { saysNoSample } from '../../../../server/trade/readings/noSample';
import { notesOf, regions, table } from '../tableRegions';

describe('a cell that says that there is no sample', () => {
  it.each([
    ...['(empty)', '-', '—', 'none', '<no sample>', 'n/a', '[blank]'],
    ...[
      '(leer)',
      'kein Sample',
      'vide',
      'aucun fichier',
      'vacío',
      'ningún archivo',
      'vuoto',
      'vazio',
      'leeg',
    ],
    ...['geen', 'tomt', 'ingen fil', 'tyhjä', 'brak pliku', 'prázdné', 'пусто', 'нет файла', 'κενό', 'üres'],
    ...['boş', 'gol', 'buit', 'nema', 'няма', 'порожньо', '空', 'ファイルなし', '없음'],
  ])('%s makes no zone and is told', (none) => {
    const text = table('Sample | Key', 'skin.wav | 50', `${none} | 51`, 'rim.wav | 52', 'bell.wav | 53');
    expect(regions(text).map(({ sample }) => sample)).toEqual(['skin.wav', 'rim.wav', 'bell.wav']);
    expect(notesOf(text)).toContainEqual(
      expect.stringMatching(/^ignored: Line 3 is no zone: it names no sample/),
    );
  });

  it('is told where most rows name none', () => {
    const text = table('Sample | Key', 'skin.wav | 50', 'vide | 51', 'vide | 52', '- | 53');
    expect(regions(text).map(({ sample }) => sample)).toEqual(['skin.wav']);
  });

  it('is a name where names have no endings, unless it cannot be one', () => {
    expect(saysNoSample('empty', false)).toBe(false);
    expect(saysNoSample('(empty)', false)).toBe(true);
    expect(saysNoSample('no sample', false)).toBe(true);
  });

  it.each(['Tom', 'tom', 'sample', 'file', 'Empty hall', 'no 1', 'off', '1', ''])('is not "%s"', (name) => {
    expect(saysNoSample(name, true)).toBe(false);
  });
});
