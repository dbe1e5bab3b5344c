import { byCount, counted } from '../../model/wording/counted';
import { listText } from '../../model/wording/listText';
import { readHeading } from '../../trade/headings/headings';
import type { ColumnMeaning } from '../../trade/meaning';
import { lookAt } from '../columns/cellKinds';
import { findHeading, headingsOf, isHeadingRow } from '../headings/headingRows';
import { arrangedCells } from './arrangedCells';
import type { Assumption, TableCells } from './cells';
import { cellsOfRow, filledWidth } from './filledWidth';
import type { Fitting, PlacedRow } from './rowFit';
import { RowFit } from './rowFit';
import { waysOf } from './split/valuePlaces';

/** So many full rows tell what stands where, and so many columns a table has at most. */
const looked = 300;
const fewestFull = 2;
const mostColumns = 24;
/** A row with more cells missing, or too many, is not put right. */
const mostOff = 2;
/** So many rows are put right. */
const mostUneven = 1000;
/** Fewer numbers make no row of values. */
const fewestNumbers = 2;
const mostBefore = 40;

/** Values that a zone is not made without: where they stay open, the row is left out. */
const needed: ReadonlySet<ColumnMeaning | undefined> = new Set<ColumnMeaning>([
  'sample',
  'key',
  'lokey',
  'hikey',
  'key_range',
  'lovel',
  'hivel',
  'velocity_range',
  'seq_position',
  'trigger',
  'keyswitch',
]);

/** Of those, the ones that nothing around tells. */
const alone: ReadonlySet<ColumnMeaning | undefined> = new Set<ColumnMeaning>(['sample', 'key', 'key_range']);

/** Rows below one another under the same headings. */
interface Stretch {
  headings: readonly string[];
  rows: number[];
}

/** A row under its headings, `undefined` where it is left out, and what is told of it. */
interface Mended {
  row: PlacedRow | undefined;
  told: Assumption;
}

/** A way to put a row under the headings. */
interface Way {
  row: PlacedRow;
  /** The columns without a cell, or the cells that are one too many. */
  off: readonly number[];
  fit: Fitting;
}

/**
 * Puts rows right that have fewer cells than there are headings, or more, where they contradict the headings as they stand: the cell that
 * is missing or too many is looked for where the row then agrees with the others. Where it stays open, what is in doubt is left out. Each
 * is told. `undefined` where all rows stand as they should.
 */
export function mendedUnevenRows(cells: TableCells): TableCells | undefined {
  const mended = new Map<number, Mended>();
  for (const stretch of stretchesOf(cells)) mendStretch(cells, stretch, mended);
  if (mended.size === 0) return undefined;
  const rows: PlacedRow[] = [];
  for (let row = 0; row < cells.rowCount; row++) {
    const found = mended.get(row);
    if (!found) rows.push(cellsOfRow(cells, row));
    else if (found.row) rows.push(found.row);
  }
  const arranged = arrangedCells(cells, rows);
  arranged.assumptions = [...cells.assumptions, ...Array.from(mended.values(), ({ told }) => told)];
  return arranged;
}

function stretchesOf(cells: TableCells): Stretch[] {
  const first: number[] = [];
  for (let row = 0; row < cells.rowCount && first.length < mostBefore; row++)
    if (cells.filled(row) > 0) first.push(row);
  const heading = findHeading(cells, first);
  const found: Stretch[] = [];
  if (heading < 0 || cells.width(heading) > mostColumns) return found;
  let below = heading;
  for (let row = heading; row < cells.rowCount; row++) {
    if (row === heading || (row > below && isHeadingRow(cells, row))) {
      const { headings, rows } = headingsOf(cells, row, Math.min(mostColumns, cells.width(row)));
      below = Math.max(...rows);
      const last = headings.findLastIndex(({ text }) => text !== '');
      found.push({ headings: headings.slice(0, last + 1).map(({ text }) => text), rows: [] });
    } else if (row > below && cells.filled(row) > 1) found.at(-1)?.rows.push(row);
  }
  return found;
}

function mendStretch(cells: TableCells, { headings, rows }: Stretch, mended: Map<number, Mended>): void {
  const count = headings.length;
  const usual = mostUsual(rows.map((row) => cells.width(row)));
  const widths = rows.map((row) => widthOf(cells, row, count, usual));
  const isFull = (at: number) => widths[at] === count;
  const places = [...rows.keys()].filter(isFull).slice(0, looked);
  const [full, next] = [
    places.map((at) => cellsOfRow(cells, rows[at] ?? 0)),
    places
      .filter((at) => isFull(at + 1))
      .map((at) => [cellsOfRow(cells, rows[at] ?? 0), cellsOfRow(cells, rows[at + 1] ?? 0)] as const),
  ];
  if (full.length < fewestFull || full.length === rows.length) return;
  const meanings = headings.map((text) => readHeading(text)?.meaning);
  const sample = meanings.indexOf('sample');
  if (sample < 0) return;
  const uneven = widths.filter((width) => width !== count).length;
  const endsAreOpen = uneven * 2 > full.length;
  const fit = new RowFit(cells, meanings, full, next, endsAreOpen);
  for (const [at, row] of rows.entries()) {
    const off = (widths[at] ?? 0) - count;
    if (off === 0 || Math.abs(off) > mostOff || mended.size >= mostUneven) continue;
    const own = cellsOfRow(cells, row).slice(0, widths[at]);
    if (countNumbers(cells, own) < fewestNumbers) continue;
    const beside = (other: number) => (isFull(other) ? cellsOfRow(cells, rows[other] ?? 0) : undefined);
    const ways = waysFor(own, count).map((way) => {
      const judged = fit.of(way.row, beside(at - 1), beside(at + 1));
      const spared = off > 0 ? costOfSparing(cells, own, way.off, endsAreOpen) : 0;
      return { ...way, fit: { ...judged, cost: judged.cost + spared } };
    });
    const found = settle(cells, ways, off < 0, { headings, meanings });
    const name = cells.value(own[sample] ?? -1).slice(0, 60);
    const than = `The row of "${name}" has ${counted(Math.abs(off), 'cell')} ${off < 0 ? 'less' : 'more'} than there are headings`;
    if (!found) continue;
    const told: Assumption = { text: `${than}${found.how}`, ...cells.rowSpan(row) };
    if (found.kind) told.kind = found.kind;
    mended.set(row, { row: found.row, told });
  }
}

/** How many cells a row has, without those behind the last heading that are empty in all rows. */
function widthOf(cells: TableCells, row: number, count: number, usual: number): number {
  const width = cells.width(row);
  const isOdd = width !== usual && width <= count + mostOff;
  return width <= count || isOdd ? width : Math.max(count, filledWidth(cells, row));
}

function mostUsual(widths: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 0;
}

/** All ways to put a row under the headings in its order; the first leaves the end empty, or cuts it off. */
function waysFor(own: readonly number[], count: number): { row: PlacedRow; off: readonly number[] }[] {
  const isShort = own.length < count;
  return waysOf(Math.min(own.length, count), Math.max(own.length, count)).map((places) => {
    if (!isShort)
      return {
        row: places.map((place) => own[place] ?? -1),
        off: own.filter((_, at) => !places.includes(at)),
      };
    const row = Array.from({ length: count }, (_, column) => own[places.indexOf(column)] ?? -1);
    return { row, off: [...row.keys()].filter((column) => !places.includes(column)) };
  });
}

/** What it costs to take cells out: nothing for empty ones, and for words or what many rows have behind the last heading. */
function costOfSparing(
  cells: TableCells,
  own: readonly number[],
  off: readonly number[],
  endsAreOpen: boolean,
): number {
  const isEnd = (cell: number) => own.indexOf(cell) >= own.length - off.length;
  const isFree = (cell: number) =>
    cells.starts[cell] === cells.ends[cell] ||
    (isEnd(cell) && (endsAreOpen || countNumbers(cells, [cell]) === 0));
  return off.filter((cell) => !isFree(cell)).length;
}

interface Columns {
  headings: readonly string[];
  meanings: readonly (ColumnMeaning | undefined)[];
}

/** What becomes of a row, and a clause that says so. */
interface Settled {
  row: PlacedRow | undefined;
  how: string;
  kind?: 'dropped';
}

/** The way that agrees best with the other rows; `undefined` where the row may stay as it stands. */
function settle(
  cells: TableCells,
  ways: readonly Way[],
  isShort: boolean,
  columns: Columns,
): Settled | undefined {
  const [asItStands] = ways;
  if (!asItStands) return undefined;
  const least = Math.min(...ways.map(({ fit }) => fit.cost));
  const best = ways.filter(({ fit }) => fit.cost === least && !fit.isWrong);
  const nameOf = (off: number) =>
    `"${isShort ? (columns.headings[off] ?? '') : cells.value(off).slice(0, 30)}"`;
  const names = (way: Way) => listText(way.off.map(nameOf), 'and');
  if (best.includes(asItStands) && (least === 0 || best.length === 1))
    return isShort && asItStands.fit.lacks
      ? { row: asItStands.row, how: `: ${names(asItStands)} at its end is taken to be missing. Check it.` }
      : undefined;
  // What contradicts its column alone is told where its value is read.
  if (best.length === 0 && !asItStands.fit.isOutOfOrder) return undefined;
  const textsOf = ({ row }: Way) => row.map((cell) => cells.value(cell)).join('\n');
  const distinct = [...new Map(best.map((way) => [textsOf(way), way])).values()];
  const [only, ...others] = distinct;
  if (!only)
    return {
      row: undefined,
      how: `, and contradicts the other rows wherever ${isShort ? 'one is added' : 'one is taken out'}, so it is left out. Put its cells right.`,
      kind: 'dropped',
    };
  if (others.length > 0) return inDoubt(cells, distinct, isShort, columns, nameOf);
  const what = `${names(only)} ${byCount(only.off.length, 'is', 'are')} ${isShort ? 'missing' : 'left out'}`;
  const how = `: ${what}, as only then it agrees with the other rows`;
  if (isShort && only.off.some((column) => alone.has(columns.meanings[column])))
    return { row: undefined, how: `${how}. It is left out. Fill the cell in.`, kind: 'dropped' };
  return { row: only.row, how: `${how}. Check it.` };
}

/** A row that agrees with the others in several ways: without the values that differ between them, or left out where those are needed. */
function inDoubt(
  cells: TableCells,
  ways: readonly Way[],
  isShort: boolean,
  { headings, meanings }: Columns,
  nameOf: (off: number) => string,
): Settled {
  const places = [...new Set(ways.flatMap(({ off }) => off))].sort((a, b) => a - b).map(nameOf);
  const why = `. It may be ${listText(places, 'or')} that is ${isShort ? 'missing' : 'too many'}`;
  const open = headings.map(
    (_, column) => new Set(ways.map(({ row }) => cells.value(row[column] ?? -1))).size > 1,
  );
  if (open.some((isOpen, column) => isOpen && needed.has(meanings[column])))
    return { row: undefined, how: `${why}, so the row is left out. Put its cells right.`, kind: 'dropped' };
  const row = (ways[0] as Way).row.map((cell, column) => (open[column] ? -1 : cell));
  const left = headings.filter((_, column) => open[column]).map((text) => `"${text}"`);
  return {
    row,
    how: `${why}, so its ${listText(left, 'and')} ${byCount(left.length, 'is', 'are')} left out. Put its cells right.`,
  };
}

function countNumbers(cells: TableCells, row: PlacedRow): number {
  return row.filter((cell) => cell >= 0 && !Number.isNaN(lookAt(cells.plain(cell)).value)).length;
}
