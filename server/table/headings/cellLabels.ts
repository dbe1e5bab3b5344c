import { isAudioFileName } from '../../model/fileNames';
import { readHeading } from '../../trade/headings/headings';
import type { ColumnMeaning } from '../../trade/meaning';
import { letterNote } from '../../trade/readings/notePatterns';
import type { TableCells } from '../cells/cells';
import type { TableRows } from '../cells/tableRows';

/** One row alone may say anything. */
const fewestRows = 2;
const mostLooks = 200;
/** A word, and the value that it stands before: `root 38`, `vel: 1-127`. */
const labelled = new RegExp(
  String.raw`^(\p{L}{2,}\.?(?:[ _-]\p{L}{2,}\.?)?)\s*[:=]?\s*((?:[-+\u2212]?[\d.,]*\d|${letterNote}-?\d).*)$`,
  'su',
);
const bracketed = /^[([]\s*([^()[\]]{1,20}?)\s*[)\]]$/s;
/** What words before values may name: what is no number is no value that they stand before. */
const counted: ReadonlySet<ColumnMeaning> = new Set<ColumnMeaning>([
  'key',
  'key_range',
  'lokey',
  'hikey',
  'pitch_keycenter',
  'velocity_range',
  'lovel',
  'hivel',
  'tune',
  'transpose',
  'volume',
  'pan',
  'loop_start',
  'loop_end',
  'loop_length',
  'offset',
  'end',
]);

/**
 * Gives columns without a heading the word that all their cells begin with, as `root 38` and `vel 1-64` do, and takes it out of the cells;
 * and takes away brackets that stand around each cell of such a column.
 */
export function useCellLabels(cells: TableCells, tables: readonly TableRows[]): void {
  for (const { headings, data } of tables) {
    const looked = data.slice(0, mostLooks);
    for (const [column, heading] of headings.entries()) {
      if (heading.text !== '') continue;
      const label = labelOf(cells, looked, column);
      if (label !== undefined) {
        heading.text = label;
        heading.isInCells = true;
      }
      const values = label === undefined ? bracketed : labelled;
      if (label === undefined && !looked.every((row) => isIn(cells, row, column, bracketed))) continue;
      for (const row of data) {
        const cell = cells.cell(row, column);
        const found = values.exec(cells.value(cell));
        const value = found?.at(-1);
        if (value !== undefined) cells.rewritten.set(cell, value);
      }
    }
  }
}

function isIn(cells: TableCells, row: number, column: number, pattern: RegExp): boolean {
  return pattern.test(cells.value(cells.cell(row, column)));
}

/** The word that the filled cells of a column all begin with, where it names what they hold. */
function labelOf(cells: TableCells, rows: readonly number[], column: number): string | undefined {
  const filled = rows.map((row) => cells.value(cells.cell(row, column))).filter((text) => text !== '');
  if (filled.length < fewestRows || filled.some(isAudioFileName)) return undefined;
  const [first, ...more] = filled.map((text) => labelled.exec(text)?.[1]);
  if (first === undefined || more.some((word) => word?.toLowerCase() !== first.toLowerCase()))
    return undefined;
  const meaning = readHeading(first)?.meaning;
  return meaning !== undefined && counted.has(meaning) ? first : undefined;
}
