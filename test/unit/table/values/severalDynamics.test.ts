import { describe, expect, it } from 'vitest';
import { dynamicLetters } from '../../../../server/trade/dynamics';
import { dynamicsIn } from '../../../../server/trade/dynamicsIn';
import { languages } from '../../../../server/trade/languages/languages';
import { notesOf, regions, table } from '../tableRegions';

const at = (letter: (typeof dynamicLetters)[number]) => dynamicLetters.indexOf(letter);

describe('a cell with several dynamics', () => {
  it.each([
    'p+mf',
    'p/mf',
    'p-mf',
    'p – mf',
    'p & mf',
    'p, mp, mf',
    'p..mf',
    'from p to mf',
    'p→mf',
    'mf/p',
    'pからmfまで',
  ])('takes them all: %s', (text) => {
    expect(dynamicsIn(text)).toEqual({ soft: at('p'), loud: at('mf'), areLetters: true });
  });

  it.each([...new Set(languages.flatMap(({ and, between }) => [...and, ...between]))])(
    'takes two with a word between: %s',
    (word) => {
      expect(dynamicsIn(`p ${word} mf`)).toEqual({ soft: at('p'), loud: at('mf'), areLetters: true });
    },
  );

  it.each(['soft and loud', 'mezzo-piano - forte', 'leise bis laut', 'entre piano et forte'])(
    'may have words: %s',
    (text) => {
      expect(dynamicsIn(text)?.areLetters).toBe(false);
    },
  );

  it.each(['fp', 'p and so on', 'soft and warm', 'p-', '+ f', 'p mf', '', 'medium soft tone'])(
    'is none: %s',
    (text) => {
      expect(dynamicsIn(text)).toBeUndefined();
    },
  );

  const rows = [
    'h1.wav | 50 | 53 | p',
    'h2.wav | 50 | 53 | mf',
    'h3.wav | 50 | 53 | f',
    'h5.wav | 54 | 57 | f',
  ];
  const heading = 'Sample | Low | High | Dynamics';

  it('gives the velocities of both', () => {
    const [both] = regions(table(heading, 'h4.wav | 54 | 57 | p and mf', ...rows));
    expect(both).toMatchObject({ hivel: '84' });
    expect(both?.lovel).toBeUndefined();
  });

  it('gives those that the text states', () => {
    const text = `p = 1-40, mf = 41-90, f = 91-127\n\n${table(heading, ...rows, 'h4.wav | 58 | 61 | mf/f')}`;
    expect(regions(text)[4]).toMatchObject({ lovel: '41' });
    expect(regions(text)[4]?.hivel).toBeUndefined();
  });

  it('may name a layer', () => {
    const named = rows.map((row) =>
      row.replace('| p', '| soft').replace('| mf', '| medium').replace('| f', '| hard'),
    );
    const text = table('Sample | Low | High | Layer', ...named, 'h4.wav | 54 | 57 | soft & medium');
    expect(regions(text).find(({ sample }) => sample === 'h4.wav')).toMatchObject({ hivel: '84' });
  });

  it('or one odd cell leaves the others what they are', () => {
    const text = table(heading, ...rows, 'h4.wav | 58 | 61 | whatever');
    expect(regions(text)[1]).toMatchObject({ lovel: '43', hivel: '84' });
    expect(notesOf(text).join('\n')).toContain('"whatever" names no dynamics');
  });
});
