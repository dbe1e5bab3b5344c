import { readHeading } from '../../trade/headings/headings';
import type { Unit } from '../../trade/meaning';
import { readNumber } from '../../trade/readings/numberReading';
import { arrangedCells } from './arrangedCells';
import type { TableCells } from './cells';
import { cellsOfRow, filledWidth } from './filledWidth';
import { namesAudioFile } from './namesAudioFile';

type Kind = 'empty' | 'file' | 'number' | 'text' | Unit;

/** Rows that are looked at to learn what stands where, and the widest table that is. */
const looked = 300;
const mostColumns = 60;
const leastRows = 2;
/** So many cells more have to stand under cells of their kind (our choice). */
const leastGain = 2;

/** What most rows with a sample hold: the column of the file, how many cells there are and such rows among the first. */
interface Usual {
  file: number;
  width: number;
  rows: readonly number[];
}

/** The kinds of cells that the columns of a table hold. */
type ColumnKinds = readonly ReadonlySet<Kind>[];

/**
 * Puts rows right that stand one cell too far right, by an empty cell, or too far left, by a missing first one, where the name of the
 * file and the kinds of the cells show it, and the ends of rows that lack an empty cell, where units show it. Each is told. `undefined`
 * where all rows stand as they should.
 */
export function realignedRows(cells: TableCells): TableCells | undefined {
  const usual = usualRow(cells);
  if (!usual) return undefined;
  const moved = new Map<number, { row: number[]; how: string }>();
  let kinds: ColumnKinds | undefined;
  const filledKinds = kindsOf(cells, filledToEnd(cells, usual));
  const haveUnits = filledKinds.some(hasUnit);
  for (let row = 0; row < cells.rowCount; row++) {
    const isHome = namesAudioFile(cells, cells.cell(row, usual.file));
    const width = cells.width(row);
    const mayLack = isHome && haveUnits && filledWidth(cells, row) < usual.width;
    if (isHome && width <= usual.width && !mayLack) continue;
    if (cells.filled(row) < 3 || width > mostColumns) continue;
    const file = fileColumn(cells, row);
    if (file < 0) continue;
    if (!isHome || width > usual.width) kinds ??= kindsOf(cells, usual);
    const found =
      kinds && (!isHome || width > usual.width)
        ? realigned(cells, { row, file }, usual, kinds)
        : withLackingCell(cells, { row, file }, usual, filledKinds);
    if (found) moved.set(row, found);
  }
  if (moved.size === 0) return undefined;
  const rows = Array.from(
    { length: cells.rowCount },
    (_, row) => moved.get(row)?.row ?? cellsOfRow(cells, row),
  );
  const arranged = arrangedCells(cells, rows);
  arranged.assumptions = [
    ...cells.assumptions,
    ...Array.from(moved, ([row, { how }]) => ({ text: how, ...cells.rowSpan(row) })),
  ];
  return arranged;
}

function usualRow(cells: TableCells): Usual | undefined {
  const places = new Map<string, number[]>();
  let count = 0;
  for (let row = 0; row < cells.rowCount && count < looked; row++) {
    const file = fileColumn(cells, row);
    if (file < 0) continue;
    count++;
    const place = `${file} ${cells.width(row)}`;
    const rows = places.get(place);
    if (rows) rows.push(row);
    else places.set(place, [row]);
  }
  const rows = [...places.values()].sort((a, b) => b.length - a.length)[0] ?? [];
  const [first] = rows;
  if (first !== undefined && rows.length >= leastRows && rows.length * 2 > count)
    return { file: fileColumn(cells, first), width: cells.width(first), rows };
  return usualByHeadings(cells, [...places.values()]);
}

/** Where no place of the file is the most usual one: the rows that are as wide as the headings above them and have it below its own. */
function usualByHeadings(cells: TableCells, places: readonly (readonly number[])[]): Usual | undefined {
  const heading = Math.min(...places.flat()) - 1;
  if (heading < 0 || !Number.isFinite(heading)) return undefined;
  const width = cells.width(heading);
  if (cells.filled(heading) !== width) return undefined;
  const rows = places.find((some) => {
    if (some.length < leastRows || cells.width(some[0]) !== width) return false;
    const text = cells.plain(cells.cell(heading, fileColumn(cells, some[0])));
    return readHeading(text)?.meaning === 'sample';
  });
  return rows && { file: fileColumn(cells, rows[0]), width, rows };
}

function kindsOf(cells: TableCells, { width, rows }: Usual): ColumnKinds {
  return Array.from(
    { length: width },
    (_, column) => new Set(rows.map((row) => kindOf(cells, cells.cell(row, column)))),
  );
}

/** The usual rows that are filled to their end, as others may have their last cells elsewhere. */
function filledToEnd(cells: TableCells, usual: Usual): Usual {
  const rows = usual.rows.filter((row) => filledWidth(cells, row) === usual.width);
  return rows.length > 0 ? { ...usual, rows } : usual;
}

function fileColumn(cells: TableCells, row: number): number {
  const width = Math.min(cells.width(row), mostColumns);
  for (let column = 0; column < width; column++)
    if (namesAudioFile(cells, cells.cell(row, column))) return column;
  return -1;
}

function realigned(
  cells: TableCells,
  { row, file }: { row: number; file: number },
  usual: Usual,
  kinds: ColumnKinds,
): { row: number[]; how: string } | undefined {
  const own = cellsOfRow(cells, row);
  const candidates: { row: number[]; way: string }[] = [];
  for (const [at, cell] of own.entries())
    if (kindOf(cells, cell) === 'empty')
      candidates.push({ row: own.filter((_, other) => other !== at), way: 'right, by an empty cell' });
  if (own.length < usual.width && file + 1 === usual.file)
    candidates.push({ row: [-1, ...own], way: 'left, as its first cell is missing' });
  const before = agreement(cells, own, kinds);
  const scored = candidates
    .map((one) => ({ ...one, score: agreement(cells, one.row, kinds) }))
    .filter(({ row: cellsOf, score }) => cellsOf.length <= usual.width && score >= before + leastGain)
    .sort((a, b) => b.score - a.score);
  const best = scored[0];
  if (!best) return undefined;
  const name = cells.value(own[file]);
  return {
    row: best.row,
    how: `The row of "${name.slice(0, 60)}" stands one cell too far ${best.way}; it is read under the headings that fit.`,
  };
}

/** A row with an empty cell more, where only then each unit stands in a column of such; `undefined` where it is not clear which it lacks. */
function withLackingCell(
  cells: TableCells,
  { row, file }: { row: number; file: number },
  usual: Usual,
  kinds: ColumnKinds,
): { row: number[]; how: string } | undefined {
  const own = cellsOfRow(cells, row).slice(0, filledWidth(cells, row));
  const strays = own.findIndex((cell, column) => {
    const kind = kindOf(cells, cell);
    return isUnit(kind) && !kinds[column]?.has(kind);
  });
  if (strays < 0 || own.length >= usual.width) return undefined;
  const fitting = own
    .map((_, at) => at)
    .filter((at) => at > file && at <= strays)
    .map((at) => own.toSpliced(at, 0, -1))
    .filter((one) =>
      one.every((cell, column) => {
        const kind = kindOf(cells, cell);
        return kind === 'empty' || kinds[column]?.has(kind);
      }),
    )
    .map((one) => ({ one, score: agreement(cells, one, kinds) }))
    .sort((a, b) => b.score - a.score);
  const [best, next] = fitting;
  if (!best || next?.score === best.score) return undefined;
  const [name, stray] = [cells.value(own[file]), cells.plain(own[strays])];
  return {
    row: best.one,
    how: `The row of "${name.slice(0, 60)}" lacks an empty cell, as the unit of "${stray.slice(0, 30)}" shows; it is read under the headings that fit.`,
  };
}

function isEmpty(cells: TableCells, cell: number): boolean {
  return cell < 0 || cells.starts[cell] === cells.ends[cell];
}

function isUnit(kind: Kind): boolean {
  return kind !== 'empty' && kind !== 'file' && kind !== 'number' && kind !== 'text';
}

function hasUnit(kinds: ReadonlySet<Kind>): boolean {
  return [...kinds].some(isUnit);
}

/** How many cells hold what their column does; those that do not count against it. */
function agreement(cells: TableCells, row: readonly number[], kinds: ColumnKinds): number {
  return row.reduce((sum, cell, column) => {
    const kind = kindOf(cells, cell);
    if (kinds[column]?.has(kind)) return sum + 1;
    return kind === 'empty' ? sum : sum - 1;
  }, 0);
}

function kindOf(cells: TableCells, cell: number): Kind {
  if (isEmpty(cells, cell)) return 'empty';
  if (namesAudioFile(cells, cell)) return 'file';
  if (!Number.isNaN(cells.number(cell))) return 'number';
  const read = readNumber(cells.plain(cell));
  return read === undefined ? 'text' : (read.unit ?? 'number');
}
