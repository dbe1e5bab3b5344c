import { describe, expect, it } from 'vitest';
import { panWord } from '../../../../server/trade/languages/cellWords';
import { regions, table } from '../../table/tableRegions';

// Words from dictionaries of each language (from memory).
describe('headings in Romanian, Ukrainian, Croatian and Bulgarian', () => {
  it.each([
    [
      'Romanian',
      'Eșantion | Clapa de jos | Clapa de sus | Nota de bază | Viteză minimă | Viteză maximă | Volum',
    ],
    [
      'Romanian, inflected',
      'Fișierul | Nota inferioară | Nota superioară | Nota fundamentală | Velocity min | Velocity max | Nivel',
    ],
    [
      'Ukrainian',
      'Семпл | Найнижча клавіша | Найвища клавіша | Основна нота | Мін. сила | Макс. сила | Гучність',
    ],
    ['Ukrainian, of others', 'Файл | Нижня нота | Верхня нота | Базова нота | Сила від | Сила до | Рівень'],
    [
      'Croatian',
      'Datoteka | Najniža tipka | Najviša tipka | Osnovna nota | Jačina od | Jačina do | Glasnoća',
    ],
    [
      'Serbian',
      'Fajl | Donja dirka | Gornja dirka | Osnovni ton | Min jačina udara | Maks jačina udara | Jačina zvuka',
    ],
    ['Bulgarian', 'Файл | Най-ниска нота | Най-висока нота | Основна нота | Мин. сила | Макс. сила | Ниво'],
  ])('are known: %s', (_, headings) => {
    const text = table(
      headings,
      'drum 41.wav | 40 | 43 | 41 | 1 | 70 | -2',
      'drum 41 loud.wav | 40 | 43 | 41 | 71 | 127 | -1.5',
      'drum 45.wav | 44 | 48 | 45 | 1 | 70 | -3',
    );
    expect(regions(text)).toMatchObject([
      { lokey: '40', hikey: '43', pitch_keycenter: '41', hivel: '70', volume: '-2' },
      { lokey: '40', hikey: '43', pitch_keycenter: '41', lovel: '71', volume: '-1.5' },
      { lokey: '44', hikey: '48', pitch_keycenter: '45', hivel: '70', volume: '-3' },
    ]);
  });

  it.each([
    ['Fișier | Notă | Început buclă, s | Sfârșit buclă, s'],
    ['Файл | Нота | Початок петлі, с | Кінець петлі, с'],
    ['Datoteka | Nota | Početak petlje, s | Kraj petlje, s'],
    ['Файл | Нота | Начало на примката, с | Край на примката, с'],
  ])('give loops: %s', (headings) => {
    const text = table(headings, 'bell.wav | 60 | 0.500 | 1.250', 'bell 2.wav | 62 | 0.250 | 1.100');
    expect(regions(text, { rateOf: () => 48_000 })).toMatchObject([
      { loop_start: '24000', loop_end: '60000' },
      { loop_start: '12000', loop_end: '52800' },
    ]);
  });

  it.each([
    ['Fișier stânga', 'Fișier dreapta'],
    ['Fișierul din stânga', 'Fișierul din dreapta'],
    ['Archivo izquierdo', 'Archivo derecho'],
    ['File sinistro', 'File destro'],
    ['Ficheiro esquerdo', 'Ficheiro direito'],
    ['Fichier de gauche', 'Fichier de droite'],
    ['Fitxer esquerre', 'Fitxer dret'],
    ['左文件', '右文件'],
    ['左ファイル', '右ファイル'],
    ['Ліворуч', 'Праворуч'],
    ['Лівий файл', 'Правий файл'],
    ['Lijeva datoteka', 'Desna datoteka'],
    ['Ляв файл', 'Десен файл'],
  ])('put the samples of two columns to their sides: "%s" and "%s"', (left, right) => {
    const text = table(
      `Low key | High key | Root | ${left} | ${right}`,
      '48 | 52 | 50 | bell_50_1.wav | bell_50_2.wav',
      '53 | 57 | 55 | bell_55_1.wav | bell_55_2.wav',
    );
    expect(
      regions(text)
        .map(({ sample, pan }) => `${sample} ${pan}`)
        .sort(),
    ).toEqual(['bell_50_1.wav -100', 'bell_50_2.wav 100', 'bell_55_1.wav -100', 'bell_55_2.wav 100']);
  });

  it.each([
    ['stânga', 'left'],
    ['dreapta', 'right'],
    ['зліва', 'left'],
    ['праворуч', 'right'],
    ['lijevo', 'left'],
    ['desno', 'right'],
    ['вляво', 'left'],
    ['вдясно', 'right'],
  ])('know %s as a side', (word, side) => {
    expect(panWord(word)).toBe(side);
  });
});
