import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { findDelimiter } from '../../server/table/cells/split/delimiter';
import { splitAt } from '../../server/table/cells/split/splitAt';

// papaparse is a general reader of delimited text, independent of this project: https://www.papaparse.com
const characters = { tab: '\t', semicolon: ';', comma: ',', bar: '|' } as const;
type Name = keyof typeof characters;
const nameOf = new Map(Object.entries(characters).map(([name, sign]) => [sign as string, name as Name]));

/** What papaparse makes of a text, cells trimmed and blank lines left out as is done here. */
function judged(text: string, delimiter: string): string[][] {
  return Papa.parse<string[]>(text, { delimiter, skipEmptyLines: true }).data.map((row) =>
    row.map((cell) => cell.trim()),
  );
}

function ours(text: string, name: Name): string[][] {
  const cells = splitAt(text, name);
  const rows: string[][] = [];
  for (let row = 0; row < cells.rowCount; row++) {
    const width = cells.width(row);
    if (width > 0) rows.push(Array.from({ length: width }, (_, at) => cells.value(cells.cell(row, at))));
  }
  return rows;
}

// Cells as tables of zones have them; signs that need quoting among them, none at the ends, where white space is cut.
const inner = fc.string({ unit: fc.constantFrom(...'ab1 .,;|\t"\n'), maxLength: 6 });
const edge = fc.constantFrom('a', 'b', '1', '#', '-');
const cell = fc.tuple(edge, inner, edge).map((parts) => parts.join(''));
const grid = fc
  .integer({ min: 2, max: 5 })
  .chain((width) =>
    fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1, maxLength: 6 }),
  );

describe('quoting against papaparse', () => {
  it.each(Object.keys(characters) as Name[])('text that papaparse wrote with %s reads back', (name) => {
    fc.assert(
      fc.property(grid, fc.boolean(), fc.constantFrom('\n', '\r\n'), (rows, quotes, newline) => {
        const text = Papa.unparse(rows, { delimiter: characters[name], quotes, newline });
        expect(ours(text, name)).toEqual(rows);
        expect(ours(text, name)).toEqual(judged(text, characters[name]));
      }),
      { numRuns: 200 },
    );
  });

  it.each([
    'a,"b,c",d\n1,2,3',
    '"a ""quoted"" word",b\n,\n"",x',
    'a,b\r\n"x\r\ny",z\r\n',
    'one,two,\nthree,,four',
    '"",""\n"a",""',
  ])('%j is cut alike', (text) => {
    expect(ours(text, 'comma')).toEqual(judged(text, ','));
  });
});

describe('the delimiter against papaparse', () => {
  const texts = [
    'Sample;Root;Low;High\na.wav;60;58;62\nb.wav;65;63;67',
    'Sample,Root,Low,High\na.wav,60,58,62\nb.wav,65,63,67',
    'Sample\tRoot\tLow\tHigh\na.wav\t60\t58\t62\nb.wav\t65\t63\t67',
    'Sample|Root|Low|High\na.wav|60|58|62\nb.wav|65|63|67',
    '"Sample";"Gain"\n"a, soft.wav";"-3.5"\n"b, soft.wav";"1.5"',
    'a.wav\t60\t"x, y, z"\nb.wav\t61\t"u, v, w"',
  ];
  it.each(texts)('%j', (text) => {
    const found = Papa.parse(text, { delimitersToGuess: Object.values(characters) }).meta.delimiter;
    expect(findDelimiter(text)).toBe(nameOf.get(found));
  });
});
