import { describe, expect, it } from 'vitest';
import { bracketsCountIn } from '../../../../server/trade/statements/bracketsCount';
import { notesOf, regions, table } from '../tableRegions';

const rows = table(
  'Sample | Low | High | Root | Tune (ct)',
  'reed_a.wav | 40 | 44 | 42 | 3',
  'reed_b.wav | 45 | 49 | 47 | -6',
  'reed_c.wav | 50 | 54 | 52 | 0',
  'reed_d.wav | 55 | 59 | 57 | 8',
);
const replaced = (old: string, text: string) => rows.replace(old, text);
const values = (text: string) =>
  regions(text).map((region) => [region.lokey, region.hikey, region.pitch_keycenter, region.tune].join(' '));

describe('an old and a new value in a cell', () => {
  it.each(['→', '->', '=>', '⇒'])('are parted by an arrow: %s', (arrow) => {
    const text = replaced('\t54\t', `\t53 ${arrow} 54\t`).replace('\t-6', `\t5 ${arrow} -6`);
    expect(values(text)).toEqual(values(rows));
    expect(notesOf(text).join('\n')).toMatch(
      /is read as 54: the value behind the arrow is taken for the new one/,
    );
  });

  it.each([
    '53 no, 54',
    '53, sorry: 54',
    '53 – rather 54',
    '53 nein, 54',
    '53, besser 54',
    '53 non, plutôt 54',
    '53, mejor 54',
    '53 não, 54',
    '53, anzi 54',
    '53 nee, 54',
    '53 nej, 54',
    '53, raczej 54',
    '53 нет, 54',
    '53ではなく54',
    '53、いや54',
    '53 不对，54',
    '53 아니고 54',
    '53 falsch, richtig: 54',
    '53 must be 54',
    '53 moet 54',
    '53, powinno być 54',
    '53 誤り、54',
  ])('are parted by words: %s', (cell) => {
    const text = replaced('\t54\t', `\t${cell}\t`);
    expect(values(text)).toEqual(values(rows));
    expect(notesOf(text).join('\n')).toMatch(
      /is read as 54: the value behind the word is taken for the right one/,
    );
  });

  it.each(['54, not 53', '54, nicht 53', '54, no 53', '54, nie 53', '54, не 53'])(
    'stay the first one where a word calls the second wrong: %s',
    (cell) => {
      expect(values(replaced('\t54\t', `\t${cell}\t`))).toEqual(values(rows));
    },
  );

  it('may be note names, names of files and more than two', () => {
    const text = table(
      'Sample | Low | High',
      'a.wav | C3 | E3',
      'b_old.wav → b.wav | F3 → F#3 | A3',
      'c.wav | A#3 | C4 → D4 → C#4',
    );
    expect(regions(text).map(({ sample, lokey, hikey }) => `${sample} ${lokey} ${hikey}`)).toEqual([
      'a.wav 48 52',
      'b.wav 54 57',
      'c.wav 58 61',
    ]);
  });

  it('are the ends of a range in a column of ranges', () => {
    const text = table(
      'Sample | Keys | Root',
      'a.wav | 40 → 44 | 42',
      'b.wav | 45 → 49 | 47',
      'c.wav | 50 | 50',
    );
    expect(
      regions(text)
        .map(({ lokey, hikey }) => `${lokey} ${hikey}`)
        .slice(0, 2),
    ).toEqual(['40 44', '45 49']);
  });

  it.each([
    'Where two numbers stand, the one in brackets is the correct one.',
    'Bei zwei Werten gilt der in Klammern.',
    'Entre parenthèses : la valeur corrigée, c’est elle qui compte.',
    'El valor entre paréntesis es el que vale.',
    'Fra parentesi il valore corretto.',
    'Het getal tussen haakjes geldt.',
    'Värdet inom parentes gäller.',
    'Liczba w nawiasie obowiązuje.',
    'Значение в скобках верное.',
    '括弧内の値が正しい。',
  ])('stand in brackets that count: %s', (said) => {
    const text = `${said}\n\n${replaced('\t54\t', '\t53 (54)\t')}`;
    expect(values(text)).toEqual(values(rows));
    expect(notesOf(text).join('\n')).toMatch(/is read as 54.*in brackets counts/);
  });

  it.each([
    'Old values stand in brackets.',
    'Die Werte in Klammern gelten nicht.',
    'In brackets: level correction in dB.',
    'All takes (see brackets).',
  ])('are not in brackets where nothing says that these count: %s', (said) => {
    expect(bracketsCountIn([said])).toBeUndefined();
    const text = `${said}\n\n${replaced('\t54\t', '\t54 (53)\t')}`;
    expect(values(text)).toEqual(values(rows));
  });
});

describe('a line that overrules a value of the table', () => {
  it.each([
    ['PS: reed_b.wav has a wrong root, it should be 46.', '45 49 46 -6'],
    ['Edit: the root of reed_b.wav is 46, not 47.', '45 49 46 -6'],
    ['Nachtrag: bei reed_b stimmt der Grundton nicht, 46 statt 47.', '45 49 46 -6'],
    ['Oubli : reed_b.wav, fondamentale 46 au lieu de 47.', '45 49 46 -6'],
    ['reed_b.wav: tune -6 is wrong, take -9.', '45 49 47 -9'],
    ['reed_b.wav: grondtoon 46 in plaats daarvan.', '45 49 46 -6'],
    ['reed_b.wav: Grundton 46 anstelle des anderen.', '45 49 46 -6'],
  ])('%s', (said, expected) => {
    const text = `${rows}\n\n${said}`;
    expect(values(text)[1]).toBe(expected);
    expect(values(text).filter((_, at) => at !== 1)).toEqual(values(rows).filter((_, at) => at !== 1));
    expect(notesOf(text).join('\n')).toMatch(/For "reed_b.wav", the text gives .* the text counts/);
  });

  it('is only noted where it does not say which value is right', () => {
    const text = `${rows}\n\nI recorded reed_b.wav on root 46 in the barn.`;
    expect(values(text)).toEqual(values(rows));
    expect(notesOf(text).join('\n')).toMatch(/gives 46 where column "Root" has "47"; the table counts/);
  });

  it.each([
    'reed_b.wav has root 47 as you see.',
    'reed_b.wav and reed_c.wav should be 46 and 51.',
    'reed_b.wav should be louder by 2.',
    'reed_b.wav plays from 45 to 49 with root 47.',
  ])('is none: %s', (said) => {
    expect(values(`${rows}\n\n${said}`)).toEqual(values(rows));
  });
});

describe('a table without headings whose columns the text lists', () => {
  const bare = rows.split('\n').slice(1).join('\n');
  it.each([
    'Columns: sample, low key, high key, root, tune in cents',
    'The order is: file, lowest key, highest key, root key and fine tuning.',
    'Reihenfolge: Datei, tiefste Taste, höchste Taste, Grundton, Feinstimmung',
    'Colonnes : fichier, note basse, note haute, note fondamentale, accordage',
  ])('%s', (said) => {
    const text = `${said}\n\n${bare}`;
    expect(values(text)).toEqual(values(rows));
    expect(notesOf(text).join('\n')).toMatch(/The columns are taken to be .*, as the text lists them/);
  });

  it('is not read by a list of other things', () => {
    const text = `We brought bread, cheese, apples, cider and a cake.\n\n${bare}`;
    expect(notesOf(text).join('\n')).not.toMatch(/as the text lists them/);
  });
});

// MIDI 1.0: middle C is key 60.
describe('the number of middle C', () => {
  it.each([
    ['Middle C is key 48 here.', '52 56 54 3'],
    ['Das mittlere C hat bei uns die Nummer 72.', '28 32 30 3'],
    ['Middle C is 60.', '40 44 42 3'],
  ])('moves all numbers of keys: %s', (said, expected) => {
    expect(values(`${said}\n\n${rows}`)[0]).toBe(expected);
  });

  it('is noted and not believed where the files or the bounds contradict it', () => {
    const said = 'Middle C is key 48 here.';
    const roots = new Map([
      ['reed_a.wav', 42],
      ['reed_b.wav', 47],
      ['reed_c.wav', 52],
    ]);
    const reading = { rootKeyOf: (sample: string) => roots.get(sample) };
    expect(regions(`${said}\n\n${rows}`, reading)[0]?.lokey).toBe('40');
    expect(notesOf(`${said}\n\n${rows}`, reading).join('\n')).toMatch(
      /not read so that middle C has the number 48/,
    );
    const high = rows.replace('\t59\t', '\t120\t');
    expect(regions(`${said}\n\n${high}`)[0]?.lokey).toBe('40');
  });
});
