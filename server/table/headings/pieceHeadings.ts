import { isLengthWord } from '../../trade/headings/headingStems';
import { readHeading } from '../../trade/headings/headings';
import { wordsOf } from '../../trade/languages/spelling';
import { readNumber } from '../../trade/readings/numberReading';
import type { TableCells } from '../cells/cells';
import type { TableRows } from '../cells/tableRows';

/** The columns that say where in a recording the piece of a row lies. */
export interface PieceColumns {
  start: number;
  /** The column of ends, or of lengths. */
  second: number;
  secondIs: 'end' | 'length';
}

/** Where a piece starts and ends, in any unit. */
interface Piece {
  start: number;
  end: number;
}

const mostColumns = 40;
const mostRows = 2000;

/** Finds the columns of a table that say where pieces of recordings start and end, or how long they are, by their headings. */
export function pieceColumns({ headings }: TableRows): PieceColumns | undefined {
  const texts = headings.slice(0, mostColumns).map(({ text }) => text);
  const meanings = texts.map((text) => {
    const found = readHeading(text);
    return found?.likeness ? undefined : found?.meaning;
  });
  const start = meanings.indexOf('offset');
  if (start < 0 || meanings.indexOf('loop') >= 0) return undefined;
  const end = meanings.indexOf('end');
  if (end >= 0) return { start, second: end, secondIs: 'end' };
  const length = texts.findIndex((text, at) => meanings[at] === undefined && saysLength(text));
  return length < 0 ? undefined : { start, second: length, secondIs: 'length' };
}

/** Whether a heading says a length and nothing else but what is measured, as `Slice length (s)`. */
function saysLength(heading: string): boolean {
  const words = wordsOf(heading.replace(/[([{（].*$/u, ' '));
  return words.length > 0 && words.length < 4 && words.some((word) => isLengthWord(word));
}

/** The pieces that rows give, by row; rows whose cells are no numbers give none. */
export function piecesOf(
  cells: TableCells,
  rows: readonly number[],
  columns: PieceColumns,
): Map<number, Piece> {
  const found = new Map<number, Piece>();
  for (const row of rows.slice(0, mostRows)) {
    const at = (column: number) => readNumber(cells.plain(cells.cell(row, column)), 'time')?.number;
    const [start, second] = [at(columns.start), at(columns.second)];
    if (start === undefined || second === undefined) continue;
    found.set(row, { start, end: columns.secondIs === 'length' ? start + second : second });
  }
  return found;
}

/** Whether pieces lie behind one another, as those of one recording do that somebody cut up. */
export function lieInTurn(pieces: Iterable<Piece>): boolean {
  const sorted = [...pieces].sort((a, b) => a.start - b.start);
  return (
    sorted.length > 1 &&
    sorted.every(({ start, end }, at) => {
      const next = sorted[at + 1];
      return end > start && (next === undefined || (next.start > start && next.start >= end - 1));
    })
  );
}
