import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const rows = table(
  'File | Low | High | Root | Velocity | Level (dB)',
  'oud_1s.wav | 40 | 44 | 42 | 1-70 | -1',
  'oud_1h.wav | 40 | 44 | 42 | 71-127 | -4',
  'oud_2s.wav | 45 | 49 | 47 | 1-70 | 0',
  'oud_2h.wav | 45 | 49 | 47 | 71-127 | -3.5',
);
const levels = (said: string, below = rows) =>
  regions(`${said}\n\n${below}`).map(({ volume }) => Number(volume ?? 0));
const asWritten = [-1, -4, 0, -3.5];

describe('a level that the text changes for some rows', () => {
  it.each([
    'Take 2 dB off every "s" row, please.',
    'Every s row: -2 dB',
    'All soft rows are to be 2 dB quieter.',
    'Alle leisen Zeilen bitte 2 dB leiser.',
    'Von jeder "s"-Zeile 2 dB abziehen.',
    'Enlever 2 dB à toutes les lignes « s ».',
    'Baisser de 2 dB toutes les couches douces.',
    'Quitar 2 dB a todas las filas «s».',
    'Tirar 2 dB de todas as linhas com "s".',
    'Togliere 2 dB a tutte le righe "s".',
    'Alle "s"-rijen 2 dB zachter.',
    'Sänk alla "s"-rader med 2 dB.',
    'Wszystkie wiersze "s" o 2 dB ciszej.',
    'Všechny řádky "s" o 2 dB tišeji.',
    'Все строки «s» тише на 2 дБ / 2 dB.',
    '「s」の行はすべて2 dB下げてください。',
    '모든 "s" 행은 2 dB 내려 주세요.',
  ])('is changed by "%s"', (said) => {
    expect(levels(said)).toEqual([-3, -4, -2, -3.5]);
    expect(notesOf(`${said}\n\n${rows}`).join()).toContain('2 dB is taken off the level of 2 zones');
  });

  it.each([
    'Add 2 dB to every "h" row.',
    'Alle lauten Zeilen 2 dB lauter.',
    'Lägg till 2 dB på alla "h"-rader.',
  ])('is added to by "%s"', (said) => {
    expect(levels(said)).toEqual([-1, -2, 0, -1.5]);
  });

  it.each([
    'Make both _s files 2 dB softer than it says above.',
    'All two s files 2 dB quieter than below.',
    'Beide _s-Dateien bitte 2 dB leiser als oben angegeben.',
    'Les deux fichiers _s : 2 dB de moins que ci-dessus.',
    'Les deux fichiers _s sont à baisser de 2 dB par rapport au tableau ci-dessus.',
    'Los dos archivos _s van 2 dB más bajo que arriba.',
    'Os dois ficheiros _s devem ficar 2 dB mais baixos do que acima.',
    'De twee _s-bestanden 2 dB zachter dan hierboven staat.',
    'Båda _s-filerna ska vara 2 dB svagare än ovan.',
    'Oba pliki _s mają być o 2 dB ciszej niż powyżej.',
    'Оба файла _s сделать на 2 дБ тише, чем указано выше.',
    '2つの_sファイルは表より2 dB下げてください。',
    '两个 _s 文件都比上面低 2 dB。',
  ])('is changed beside a count, and against what is written: "%s"', (said) => {
    const parted = rows.replaceAll(/oud_(\d)/g, 'oud_$1_');
    expect(levels(said, parted)).toEqual([-3, -4, -2, -3.5]);
  });

  it('goes by groups and by dynamics', () => {
    const grouped = table('Group | File | Root | Level', 'body | a.wav | 60 | -1', 'thud | b.wav | 60 | -2');
    expect(levels('All thud rows -3 dB.', grouped)).toEqual([-1, -5]);
    const layered = table('File | Root | Dynamics | Level', 'a.wav | 60 | p | -1', 'b.wav | 60 | f | -2');
    expect(levels('Every soft row 3 dB quieter.', layered)).toEqual([-4, -2]);
  });

  it.each([
    'I have taken 2 dB off every "s" row already.',
    'Take 2 dB off every "s" row, not the second.',
    'Every "s" row differs by 2 dB.',
    'Take 2 dB off every "q" row.',
  ])('stays, with a note, where "%s" leaves it open', (said) => {
    expect(levels(said)).toEqual(asWritten);
    expect(notesOf(`${said}\n\n${rows}`).join()).toContain('is not done, as');
  });

  it.each([
    'We made the soft takes 2 dB louder on disk.',
    'All rows with a level of -2 dB are new.',
    'Every sample was normalised.',
  ])('is no matter of "%s"', (said) => {
    expect(levels(said)).toEqual(asWritten);
  });
});
