import type { DatedPair } from '../../trade/readings/dateReading';
import { pairInDate } from '../../trade/readings/dateReading';
import type { TableCells } from './cells';
import type { TableRows } from './tableRows';

/** So many rows tell whether a column has ranges, and dates among them. */
const looked = 400;
const mostColumns = 100;
const mostKept = 200;
const range = /^\s*(\d{1,3})\s*(?:[-\u2010-\u2015~:]|\.{2,3}|\bto\b)\s*(\d{1,3})\s*$/u;

interface Range {
  low: number;
  high: number;
}

/**
 * Puts the range back of which a spreadsheet made a date, as `31-Jan` of 1-31, where the other ranges of its column go on from there or
 * lead up to it. Each is told. A date that fits nothing stays as it is.
 */
export function readDatedRanges(cells: TableCells, { data, width }: TableRows): void {
  for (let column = 0; column < Math.min(width, mostColumns); column++) {
    const ranges: Range[] = [];
    const others: string[] = [];
    for (const row of data.slice(0, looked)) {
      const cell = cells.cell(row, column);
      if (cell < 0 || cells.digits(cell, 15) >= 0) continue;
      const text = cells.plain(cell);
      const [, low, high] = range.exec(text) ?? [];
      if (low === undefined) others.push(text);
      else if (ranges.length < mostKept) ranges.push({ low: Number(low), high: Number(high) });
    }
    if (ranges.length === 0) continue;
    const dates = new Map<string, DatedPair>();
    for (const text of others) {
      const pair = dates.size < mostKept ? pairInDate(text) : undefined;
      if (pair) dates.set(text, pair);
    }
    for (const [text, pair] of dates) if (!meets(pair, [...ranges, ...dates.values()])) dates.delete(text);
    if (dates.size > 0) putBack(cells, data, column, dates);
  }
}

/** Whether a range goes on where another one of its column ends, or the other way round. */
function meets(pair: DatedPair, all: readonly Range[]): boolean {
  return all.some(({ low, high }) => low === pair.high + 1 || high === pair.low - 1);
}

function putBack(
  cells: TableCells,
  data: readonly number[],
  column: number,
  dates: ReadonlyMap<string, DatedPair>,
): void {
  const told = new Set<string>();
  for (const row of data) {
    const cell = cells.cell(row, column);
    if (cell < 0 || cells.digits(cell, 15) >= 0) continue;
    const text = cells.plain(cell);
    const pair = dates.get(text);
    if (!pair) continue;
    const written = `${pair.low}-${pair.high}`;
    cells.rewritten.set(cell, written);
    if (told.has(text)) continue;
    told.add(text);
    const message = `"${text}" is a date that a spreadsheet made of a range: ${written} is taken, as the other ranges of its column fit that. Check it.`;
    cells.assumptions = [
      ...cells.assumptions,
      { text: message, start: cells.starts[cell], end: cells.ends[cell] },
    ];
  }
}
