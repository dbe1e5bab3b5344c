import { describe, expect, it } from 'vitest';
import { blankRootIn } from '../../../../server/trade/statements/keys/blankRoots';
import { xmlTable } from '../../../../server/xml/tableInXml';
import { notesOf, regions, table } from '../tableRegions';

const roots = (text: string) => regions(text).map(({ pitch_keycenter }) => Number(pitch_keycenter));

describe('root keys that are left out, where the text says what they are', () => {
  it.each([
    ['If the root key is empty it is the same as low key.', 'Root key', [41, 44, 50]],
    ['An empty root means the low key.', 'Root', [41, 44, 50]],
    ['Blank root: same as high.', 'Root', [41, 47, 50]],
    ['If own note is blank it equals the high note.', 'Own note', [41, 47, 50]],
    ['Grundton leer = tiefste Taste.', 'Grundton', [41, 44, 50]],
  ])('%s', (said, heading, expected) => {
    const rows = `File | Low | High | ${heading}`;
    const text = `${table(rows, 'a.wav | 40 | 43 | 41', 'b.wav | 44 | 47 |  ', 'c.wav | 48 | 52 | 50')}\n\n${said}`;
    expect(roots(text)).toEqual(expected);
    expect(notesOf(text).join('\n')).toContain('gives no root key');
  });

  it('are left to other ways where nothing is said of them', () => {
    expect(
      blankRootIn(['Leave the low key empty for drums.', 'Empty cells mean no root.', 'The root is low.']),
    ).toBe(undefined);
  });

  it.each(['', '\n'])('and in rows of text in XML whose columns are told once, parted by %j', (between) => {
    const parts = [
      '<set><head>wave | from | to | own key | level dB</head>',
      '<say>An empty own key is the low key.</say>',
      '<line>p1.wav | 30 | 35 | 33 | -1</line>',
      '<line>p2.wav | 36 | 40 |  | 0</line>',
      '<line>p3.wav | 41 | 47 | 44 | -2</line></set>',
    ];
    const found = xmlTable(parts.join(between));
    const read = regions(found?.table ?? '', { said: found?.said ?? [] });
    expect(read.map(({ lokey, pitch_keycenter, hikey }) => `${lokey} ${pitch_keycenter} ${hikey}`)).toEqual([
      '30 33 35',
      '36 36 40',
      '41 44 47',
    ]);
  });
});
