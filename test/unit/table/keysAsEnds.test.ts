import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const keys = (text: string) =>
  regions(text).map(({ lokey, hikey, pitch_keycenter }) =>
    [lokey ?? '-', hikey ?? '-', pitch_keycenter].join(' '),
  );
const rows = (heading: string, firsts: readonly (string | number)[]) =>
  table(
    `File | ${heading} | Root`,
    ...[40, 45, 50].flatMap((root, at) => [`a${at}.wav | ${firsts[at]} | ${root}`]),
  );

describe('a column of one key beside the roots', () => {
  it('is the lowest key where each root lies from there up to below the next', () => {
    const text = rows('Key', [38, 43, 48]);
    expect(keys(text)).toEqual(['38 42 40', '43 47 45', '48 - 50']);
    expect(notesOf(text).join()).toContain('each zone ends one below the next');
  });

  it('is the highest key where each root lies up to there', () => {
    expect(keys(rows('Key', [42, 47, 52]))).toEqual(['- 42 40', '43 47 45', '48 52 50']);
  });

  it.each([
    ['one root lies beside', [38, 46, 48]],
    ['most are roots themselves', [40, 45, 49]],
  ])('stays the key that sounds where %s', (_, firsts) => {
    expect(regions(rows('Key', firsts)).map(({ lokey, hikey, key }) => key ?? `${lokey}-${hikey}`)).toEqual(
      firsts.map((key) => `${key}-${key}`),
    );
  });
});

describe('the key that the last zone reaches to', () => {
  it.each([
    'Each zone goes up to the next; the last goes up to 60.',
    'Jede Zone reicht bis zur nächsten, die letzte bis 60.',
    'Chaque zone va jusqu’à la suivante, la dernière jusqu’à 60.',
    'Każda strefa sięga do następnej, ostatnia do 60.',
    'Každá zóna sahá po další, poslední do 60.',
    'Последняя зона идёт до 60.',
    'Viimeinen alue ulottuu 60 asti.',
    'Sonuncusu 60 kadar.',
    'Az utolsó zóna 60-ig tart.',
    '最後のゾーンは60まで',
    '最后一个音区到60',
    '마지막 구역은 60까지',
  ])('is read from "%s"', (said) => {
    expect(keys(`${said}\n\n${rows('Lowest key', [38, 43, 48])}`)).toEqual([
      '38 42 40',
      '43 47 45',
      '48 60 50',
    ]);
  });

  it('is open where no text names it', () => {
    expect(keys(rows('Lowest key', [38, 43, 48]))).toEqual(['38 42 40', '43 47 45', '48 - 50']);
  });
});
