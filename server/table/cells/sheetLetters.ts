import { arrangedCells } from './arrangedCells';
import type { TableCells } from './cells';
import { isRuling } from './split/delimiter';

const looked = 12;
const fewestLetters = 3;
const mostLetters = 26;
const fewestRows = 2;
const told =
  'The letters above the columns are those of a spreadsheet, and no headings; they and the numbers of its rows are not used.';

/** What was copied of the frame of a spreadsheet: the row of letters, how many cells rows have too many in front, and where the letters start. */
interface Frame {
  row: number;
  hasCorner: boolean;
  count: number;
}

/**
 * A table without the frame of the spreadsheet that it was copied from: the letters above its columns, `A`, `B`, `C` …, and the numbers before
 * its rows. This is told. `undefined` where there is none.
 */
export function withoutSheetLetters(cells: TableCells): TableCells | undefined {
  const frame = letterRow(cells);
  if (!frame) return undefined;
  const below = Array.from({ length: cells.rowCount - frame.row - 1 }, (_, at) => frame.row + 1 + at).filter(
    (row) => cells.filled(row) > 0 && !isRuling(cells, row),
  );
  // A line of text below a table has no number.
  const numbered = below.filter((row) => rowNumberOf(cells, row) >= 0);
  const hasNumbers =
    numbered.length >= fewestRows &&
    numbered.length * 2 > below.length &&
    numbered.every(
      (row, at) => at === 0 || rowNumberOf(cells, row) > rowNumberOf(cells, numbered[at - 1] ?? row),
    ) &&
    (frame.hasCorner || numbered.some((row) => cells.width(row) > frame.count));
  if (frame.hasCorner && !hasNumbers) return undefined;
  const drops = new Set(hasNumbers ? numbered : []);
  const rows = Array.from({ length: cells.rowCount }, (_, row) => {
    if (row === frame.row) return [];
    const own = Array.from({ length: cells.width(row) }, (_, column) => cells.cell(row, column));
    return drops.has(row) ? own.slice(1) : own;
  });
  const arranged = arrangedCells(cells, rows);
  arranged.assumptions = [...cells.assumptions, { text: told, ...cells.rowSpan(frame.row) }];
  return arranged;
}

/** The row among the first whose cells are the letters from A on. */
function letterRow(cells: TableCells): Frame | undefined {
  for (let row = 0; row < Math.min(cells.rowCount, looked); row++) {
    const width = Math.min(cells.width(row), mostLetters + 1);
    const texts = Array.from({ length: width }, (_, column) => cells.value(cells.cell(row, column)));
    while (texts.at(-1) === '') texts.pop();
    const hasCorner = texts[0] === '';
    const letters = hasCorner ? texts.slice(1) : texts;
    if (letters.length < fewestLetters) continue;
    if (letters.every((text, at) => text === String.fromCharCode(65 + at)))
      return { row, hasCorner, count: letters.length };
  }
  return undefined;
}

/** The number that a row starts with; −1 where it starts with anything else. */
function rowNumberOf(cells: TableCells, row: number): number {
  const text = cells.value(cells.cell(row, 0));
  return /^\d{1,6}$/.test(text) && cells.width(row) > 1 ? Number(text) : -1;
}
