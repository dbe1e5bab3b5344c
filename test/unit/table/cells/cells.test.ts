import { describe, expect, it } from 'vitest';
import type { TableCells } from '../../../../server/table/cells/cells';
import { findDelimiter, isRuling, splitAtDelimiter } from '../../../../server/table/cells/split/delimiter';
import { splitAt } from '../../../../server/table/cells/split/splitAt';

function grid(cells: TableCells): string[][] {
  return Array.from({ length: cells.rowCount }, (_, row) =>
    Array.from({ length: cells.width(row) }, (_, column) => cells.value(cells.cell(row, column))),
  );
}

describe('splitting at a delimiter', () => {
  it('keeps empty cells, at the ends too', () => {
    expect(grid(splitAt('\ta\t\tb\t\n\t\n', 'tab'))).toEqual([
      ['', 'a', '', 'b', ''],
      ['', ''],
    ]);
    expect(grid(splitAt('a,', 'comma'))).toEqual([['a', '']]);
  });

  it('takes CR, LF and CRLF as line ends and passes over a byte order mark', () => {
    expect(grid(splitAt('\ufeffa,b\rc,d\r\ne,f\n\ng,h', 'comma'))).toEqual([
      ['a', 'b'],
      ['c', 'd'],
      ['e', 'f'],
      [],
      ['g', 'h'],
    ]);
  });

  it('gives the span of what stands inside a cell', () => {
    const text = 'x; "a b" ;  c \n"q ""r""";\u00a0d';
    const cells = splitAt(text, 'semicolon');
    const spans = Array.from({ length: cells.cellCount }, (_, cell) =>
      text.slice(cells.starts[cell], cells.ends[cell]),
    );
    expect(spans).toEqual(['x', 'a b', 'c', 'q ""r""', 'd']);
    expect(cells.value(3)).toBe('q "r"');
  });

  it('takes a quotation mark that nothing closes, or with text behind it, for an ordinary character', () => {
    expect(grid(splitAt('"a\tb\nc\td', 'tab'))).toEqual([
      ['"a', 'b'],
      ['c', 'd'],
    ]);
    expect(grid(splitAt('"12" tape"\tb', 'tab'))).toEqual([['"12" tape"', 'b']]);
    expect(grid(splitAt('a"b,c', 'comma'))).toEqual([['a"b', 'c']]);
  });

  it('takes bars around a row for its borders', () => {
    const cells = splitAt('| a | b |\n|---|:-:|\n| c \\| d |  |\n\n  | e | f |', 'bar');
    expect(grid(cells)).toEqual([['a', 'b'], ['---', ':-:'], ['c | d', ''], [], ['e', 'f']]);
    expect([0, 1, 2].map((row) => isRuling(cells, row))).toEqual([false, true, false]);
    expect(grid(splitAt('a|b\n|c', 'bar'))).toEqual([
      ['a', 'b'],
      ['', 'c'],
    ]);
  });

  it('stays linear on text made of quotation marks', () => {
    // Quadratic work on this would not end within the time limit of the test.
    const marks = splitAt('",'.repeat(500_000), 'comma');
    expect(marks.rowCount).toBe(1);
    const openers = splitAt('"a\n'.repeat(400_000), 'comma');
    expect(openers.starts.length).toBeGreaterThan(100_000);
    const even = splitAt(`${'"" x,'.repeat(200_000)}"`, 'comma');
    expect(even.width(0)).toBe(200_001);
  });
});

describe('columns of spaces', () => {
  it('finds cells by position, empty ones too', () => {
    const text = [
      'Sample file      Low key  High key  Root',
      'soft a.wav       C3       E3        D3',
      'soft b 1.wav     F3       A3        G#3',
      'x.wav                     B3        A#3',
    ].join('\n');
    expect(grid(splitAtDelimiter(text, 'columns'))).toEqual([
      ['Sample file', 'Low key', 'High key', 'Root'],
      ['soft a.wav', 'C3', 'E3', 'D3'],
      ['soft b 1.wav', 'F3', 'A3', 'G#3'],
      ['x.wav', '', 'B3', 'A#3'],
    ]);
  });

  it('takes numbers set to the right', () => {
    const text = ['sample    lo   hi  gain', 'a.wav      0   59  -3.5', 'bb.wav    60  127     2'].join('\n');
    expect(grid(splitAtDelimiter(text, 'columns')).slice(1)).toEqual([
      ['a.wav', '0', '59', '-3.5'],
      ['bb.wav', '60', '127', '2'],
    ]);
  });

  it('falls back to runs of spaces where nothing stands in line', () => {
    const text = 'a.wav  60  58\nlong name here.wav  61  59\nb.wav    100  99';
    expect(grid(splitAtDelimiter(text, 'columns'))).toEqual([
      ['a.wav', '60', '58'],
      ['long name here.wav', '61', '59'],
      ['b.wav', '100', '99'],
    ]);
  });
});

describe('finding the delimiter', () => {
  it.each([
    ['tab', 'a.wav\t-3,5\t60\nb.wav\t1,5\t61'],
    ['semicolon', 'a.wav;-3,5;60\nb.wav;1,5;61'],
    ['semicolon', 'a, soft.wav;60;61\nb, soft.wav;62;63'],
    ['comma', 'a.wav,-3.5,60\nb.wav,1.5,61'],
    ['comma', '"a;b.wav",60\n"c;d.wav",61'],
    ['bar', '| a.wav | 60 |\n|---|---|\n| b.wav | 61 |'],
    ['bar', 'a.wav|60|61\nb.wav|62|63'],
    ['columns', 'a.wav   60  61\nb.wav   62  63'],
    ['comma', 'a.wav ,  60,  61\nb.wav ,  62,  63'],
  ])('%s', (delimiter, text) => {
    expect(findDelimiter(text)).toBe(delimiter);
  });

  it('finds none in a single column', () => {
    expect(findDelimiter('a.wav\nb.wav\nc.wav')).toBeUndefined();
    expect(findDelimiter('one cell')).toBeUndefined();
    expect(findDelimiter('')).toBeUndefined();
  });
});

describe('making a cell empty', () => {
  it('takes it out of the count of its row, once, and whatever it was to read', () => {
    const cells = splitAt('a,b,c\nd,e,f', 'comma');
    expect([cells.filled(0), cells.filled(1)]).toEqual([3, 3]);
    cells.rewritten.set(cells.cell(1, 1), 'E');
    cells.empty(1, cells.cell(1, 1));
    cells.empty(1, cells.cell(1, 1));
    expect([cells.filled(0), cells.filled(1)]).toEqual([3, 2]);
    expect(grid(cells)[1]).toEqual(['d', '', 'f']);
    expect(cells.isEmpty(1, 1)).toBe(true);
  });
});
