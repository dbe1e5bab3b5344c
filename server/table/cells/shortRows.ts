import { byCount } from '../../model/wording/counted';
import type { CellKind } from '../columns/cellKinds';
import { lookAt } from '../columns/cellKinds';
import { arrangedCells } from './arrangedCells';
import type { TableCells } from './cells';
import { namesAudioFile } from './namesAudioFile';
import { waysOf } from './split/valuePlaces';

/** So many rows tell what stands where, and so many cells a row has at most. */
const looked = 300;
const mostColumns = 24;
const fewestRows = 2;
/** More missing cells leave too much open. */
const mostMissing = 2;

/** What most rows with a file hold. */
interface Usual {
  width: number;
  kinds: readonly ReadonlySet<CellKind>[];
  /** The least and the greatest number in each column. */
  spans: readonly { least: number; greatest: number }[];
}

/**
 * Of lines parted by blanks, some of which hold fewer values than the others: puts the values where their kinds fit, and leaves those
 * out, with a note, of which it stays open to which column they belong. `undefined` where no line is short.
 */
export function filledShortRows(cells: TableCells): TableCells | undefined {
  const usual = usualRow(cells);
  if (!usual) return undefined;
  const rows: number[][] = [];
  const told: { text: string; start: number; end: number }[] = [];
  for (let row = 0; row < cells.rowCount; row++) {
    const own = Array.from({ length: cells.width(row) }, (_, column) => cells.cell(row, column));
    const missing = usual.width - own.length;
    const file = own.findIndex((cell) => namesAudioFile(cells, cell));
    const isShort = file >= 0 && missing > 0 && missing <= mostMissing && own.length > 1;
    const placed = isShort ? place(cells, own, usual) : undefined;
    rows.push(placed?.row ?? own);
    if (placed) {
      const name = cells.value(own[file]).slice(0, 60);
      const { start, end } = cells.rowSpan(row);
      told.push({ text: `The row of "${name}" has fewer values than the others. ${placed.how}`, start, end });
    }
  }
  if (told.length === 0) return undefined;
  const filled = arrangedCells(cells, rows);
  filled.assumptions = [...cells.assumptions, ...told];
  return filled;
}

function usualRow(cells: TableCells): Usual | undefined {
  const byWidth = new Map<number, number[]>();
  let count = 0;
  for (let row = 0; row < cells.rowCount && count < looked; row++) {
    const width = cells.width(row);
    if (width > mostColumns || !rowNamesFile(cells, row)) continue;
    count++;
    const rows = byWidth.get(width);
    if (rows) rows.push(row);
    else byWidth.set(width, [row]);
  }
  const [width = 0, rows = []] =
    [...byWidth].sort((a, b) => b[1].length - a[1].length || b[0] - a[0])[0] ?? [];
  if (rows.length < fewestRows || rows.length * 2 <= count) return undefined;
  const kinds = Array.from(
    { length: width },
    (_, column) => new Set(rows.map((row) => kindOf(cells, cells.cell(row, column)))),
  );
  const spans = Array.from({ length: width }, (_, column) => {
    const numbers = rows.map((row) => numberIn(cells, cells.cell(row, column))).filter(Number.isFinite);
    return { least: Math.min(...numbers), greatest: Math.max(...numbers) };
  });
  return { width, kinds, spans };
}

function numberIn(cells: TableCells, cell: number): number {
  return lookAt(cells.plain(cell)).value;
}

function rowNamesFile(cells: TableCells, row: number): boolean {
  for (let column = 0; column < cells.width(row); column++)
    if (namesAudioFile(cells, cells.cell(row, column))) return true;
  return false;
}

/** The cells of a short row in their columns; −1 where the value is missing, or it stays open which one is. */
function place(
  cells: TableCells,
  own: readonly number[],
  { width, kinds, spans }: Usual,
): { row: number[]; how: string } | undefined {
  const looks = own.map((cell) => kindOf(cells, cell));
  const numbers = own.map((cell) => numberIn(cells, cell));
  const isWithin = (number = Number.NaN, { least, greatest } = { least: 0, greatest: 0 }) =>
    number >= least && number <= greatest;
  // What is of the kind of its column counts most; a number that others there are less and greater than tells too.
  const worth = (column: number, at: number) =>
    (kinds[column]?.has(looks[at] ?? 'empty') ? 2 : 0) + (isWithin(numbers[at], spans[column]) ? 1 : 0);
  const scored = waysOf(own.length, width).map((columns) => ({
    columns,
    score: columns.reduce((sum, column, at) => sum + worth(column, at), 0),
  }));
  const best = Math.max(...scored.map(({ score }) => score));
  const fitting = scored.filter(({ score }) => score === best).map(({ columns }) => columns);
  const row = Array.from({ length: width }, () => -1);
  const left: string[] = [];
  for (const [at, cell] of own.entries()) {
    const columns = new Set(fitting.map((way) => way[at]));
    const [column] = columns;
    if (columns.size === 1 && column !== undefined) row[column] = cell;
    else left.push(`"${cells.value(cell).slice(0, 20)}"`);
  }
  const how =
    left.length === 0
      ? 'They are read under the headings that fit.'
      : `It is not clear which are missing, so ${left.join(' and ')} ${byCount(left.length, 'is', 'are')} left out.`;
  return { row, how };
}

function kindOf(cells: TableCells, cell: number): CellKind {
  if (cell < 0 || cells.starts[cell] === cells.ends[cell]) return 'empty';
  return lookAt(cells.plain(cell)).kind;
}
