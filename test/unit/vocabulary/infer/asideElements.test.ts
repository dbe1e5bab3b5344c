import { describe, expect, it } from 'vitest';
import { nestingIn } from '../../../../server/vocabulary/infer/stated/nesting';
import { readInferred, valuesIn } from './inferred';

const strings = (around: string, own = '') =>
  `<zither>${around}<course><string snd="a.wav" lo="40" hi="43" root="41"/><string snd="b.wav" lo="44" hi="47" root="45"${own}/></course></zither>`;

describe('elements that only stand beside regions', () => {
  it.each([
    ['an unknown element', '<shimmer level-db="-9" cents="12" speed-hz="5"/>'],
    ['the swing of an effect', '<vibrato cents="12" level-db="-9"/>'],
    ['the gain of a filter', '<filter level-db="-9" cents="12"/>'],
    ['how far keys are bent', '<bend cents="12"/>'],
    ['what is drawn by lot', '<random level-db="-9" cents="12"/>'],
    ['elements in elements', '<schwebung><pegel>-9</pegel><tiefe cents="12"/></schwebung>'],
    ['a French name', '<frisson niveau_db="-9" hauteur_cents="12"/>'],
  ])('give no level and no tuning, and are told of: %s', (_, beside) => {
    const text = strings(beside, ' level-db="-1"');
    expect(valuesIn(text, 'volume', 'global_volume', 'tune', 'lokey', 'pitch_keycenter')).toEqual([
      '- - - 40 41',
      '-1 - - 44 45',
    ]);
    const { unread, decisions } = readInferred(text);
    const told = [...unread, ...decisions.map(({ message }) => message)].join('\n');
    expect(told).toContain('is not read');
  });

  it.each(['defaults', 'common', 'alle', 'vorgaben', 'parDefaut', 'oletukset', '共通', 'overall'])(
    'give them where they are called <%s>, also beside others',
    (name) => {
      const shared = `<${name} level-db="-3"/>`;
      const beside = '<shimmer level-db="-9"/>';
      for (const around of [shared + beside, beside + shared])
        expect(valuesIn(strings(around), 'volume')).toEqual(['-3', '-3']);
    },
  );

  it('do so in groups', () => {
    const group = (first: number, db: number) =>
      `<course><shimmer level-db="${db}" cents="${db}"/>${[first, first + 2]
        .map((key) => `<string snd="${key}.wav" lo="${key}" hi="${key + 1}" root="${key}"/>`)
        .join('')}</course>`;
    expect(
      valuesIn(`<zither>${group(40, 7)}${group(44, 9)}</zither>`, 'volume', 'tune', 'pitch_keycenter'),
    ).toEqual(['- - 40', '- - 42', '- - 44', '- - 46']);
  });
});

describe('what is said of values of outer elements', () => {
  it.each([
    ['The nearest level takes the place of others, nothing is added up.', 'replaces'],
    ['Bei Pegeln wird nichts zusammengezählt.', 'replaces'],
    ['Les niveaux : rien ne s’ajoute.', 'replaces'],
    ['Levels of a row are added.', 'adds'],
  ])('%s', (text, is) => {
    expect(nestingIn([text])?.is).toBe(is);
  });
});
