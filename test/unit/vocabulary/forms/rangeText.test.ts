import { describe, expect, it } from 'vitest';
import { splitRange } from '../../../../server/vocabulary/forms/rangeText';

const isKey = (part: string): boolean => /^(?:-?\d+|[A-G]-?\d)$/.test(part);

function partsOf(text: string, between = '', accepts: (part: string, which: 1 | 2) => boolean = isKey) {
  const parts = splitRange(text, between, accepts);
  return parts && [parts.first, parts.second].map(({ start, end }) => text.slice(start, end));
}

/** How ranges are written (common practice). */
describe('a range in a text', () => {
  it.each([
    ['36-48', '36', '48'],
    ['36 - 48', '36', '48'],
    ['36..48', '36', '48'],
    ['36 ... 48', '36', '48'],
    ['36…48', '36', '48'],
    ['36–48', '36', '48'],
    ['36—48', '36', '48'],
    ['36:48', '36', '48'],
    ['36; 48', '36', '48'],
    ['36,48', '36', '48'],
    ['36 / 48', '36', '48'],
    ['36|48', '36', '48'],
    ['36 to 48', '36', '48'],
    ['36 48', '36', '48'],
    ['36   48', '36', '48'],
    ['C-1 .. C3', 'C-1', 'C3'],
    ['C-1-C3', 'C-1', 'C3'],
    ['-1--1', '-1', '-1'],
    ['  36-48  ', '36', '48'],
    ['60', '60', '60'],
    [' 60 ', '60', '60'],
  ])('"%s"', (text, first, second) => {
    expect(partsOf(text)).toEqual([first, second]);
  });

  it.each(['', ' ', '-', '36-', '-48-', 'x', '36-x', 'x-48', '36 x 48', '36~48'])(
    'is none in "%s"',
    (text) => {
      expect(partsOf(text)).toBeUndefined();
    },
  );

  it('is parted first by what usually parts it', () => {
    expect(partsOf('36~48', '~')).toEqual(['36', '48']);
    expect(partsOf('36 ~ 48', ' ~ ')).toEqual(['36', '48']);
    expect(partsOf('a-b:c', ':', () => true)).toEqual(['a-b', 'c']);
    expect(partsOf('a-b:c', '', () => true)).toEqual(['a', 'b:c']);
    // The second of two is the one that leads to two keys, and the last one too.
    expect(partsOf('C-1-C3', '-')).toEqual(['C-1', 'C3']);
    expect(partsOf('36-48', '~')).toEqual(['36', '48']);
    // At the start there is nothing that it parts.
    expect(partsOf('~36', '~')).toBeUndefined();
  });

  it('asks for each part by its place', () => {
    expect(partsOf('36-48', '', (part, which) => part === (which === 1 ? '36' : '48'))).toEqual(['36', '48']);
    expect(partsOf('48-36', '', (part, which) => part === (which === 1 ? '36' : '48'))).toBeUndefined();
  });

  it('says where its parts stand, without the blanks around them', () => {
    expect(splitRange(' 36 - 48 ', '-', isKey)).toEqual({
      first: { start: 1, end: 3 },
      second: { start: 6, end: 8 },
    });
    expect(splitRange(' 36 ', '-', isKey)).toEqual({
      first: { start: 1, end: 3 },
      second: { start: 1, end: 3 },
    });
  });

  it('is not looked for in a long text', () => {
    expect(partsOf(`36-48${' '.repeat(95)}`)).toEqual(['36', '48']);
    expect(partsOf(`36-48${' '.repeat(96)}`)).toBeUndefined();
  });
});
