import { describe, expect, it } from 'vitest';
import { namedReleasesIn } from '../../../../server/trade/statements/playing/namedReleases';

const marks = (text: string) => namedReleasesIn([text]).flatMap((one) => one.marks);

describe('parts of names that stand for samples of letting the key go', () => {
  it.each([
    ['Files ending in _ko are release samples.', 'ko'],
    ['Samples with "off" in their names sound on key-up', 'off'],
    ['*_up.wav = played when the key is released', 'up'],
    ['Files ending in rel are release samples', 'rel'],
    ['- _r: release samples', 'r'],
    ['_hit: attack, _let: release', 'let'],
    ['Dateien mit der Endung _aus klingen beim Loslassen der Taste.', 'aus'],
    ['Les fichiers en _fin sonnent au relâchement de la touche', 'fin'],
    ['Los archivos con "sol" suenan al soltar la tecla', 'sol'],
    ['I file con "ril" suonano al rilascio del tasto', 'ril'],
    ['Os ficheiros com _off tocam ao soltar a tecla', 'off'],
    ['Bestanden met _los klinken bij het loslaten van de toets', 'los'],
    ['Filer med _slipp låter när tangenten släpps', 'slipp'],
    ['Pliki z _pu brzmią po puszczeniu klawisza', 'pu'],
    ['Файлы с _off звучат при отпускании клавиши', 'off'],
    ['「_off」のファイルはキーを離すと鳴ります', 'off'],
  ])('%s', (text, mark) => {
    expect(marks(text)).toEqual([mark]);
  });

  it.each([
    'Files ending in _rel are not release samples',
    'The release time is 200 ms',
    'Files ending in _sus go on after the key is released, since they loop',
    'The files were released in 2019',
    'Hold the key, then release it',
  ])('are not told by "%s"', (text) => {
    expect(marks(text)).toEqual([]);
  });
});
