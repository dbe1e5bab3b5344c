import { bareWord, wordsOf } from '../../trade/languages/spelling';
import type { TableCells } from './cells';

/** Ways to put the cells of rows together, each as the first cells of its groups: of rows with one way, and of those with several. */
interface Ways {
  clear: ReadonlyMap<number, readonly number[]>;
  open: ReadonlyMap<number, readonly number[][]>;
}

/** Words for decimal numbers in the languages of the trade, each as the beginning of a word. */
const decimals =
  /(?<!\p{L})(?:decim|dezim|d\u00e9cim|desim|desetin|dziesi\u0119tn|tizedes|ondal\u0131k|\u03b4\u03b5\u03ba\u03b1\u03b4\u03b9\u03ba|\u0434\u0435\u0441\u044f\u0442\u0438\u0447\u043d)|\u5c0f\u6570|\u5c0f\u6578|\uc18c\uc218/iu;
const shortestWord = 3;
const longestLine = 400;
/** So many rows have to be written alike to say anything (our choice). */
const fewestAlike = 2;

/**
 * The ways of those rows that fit in several, where other rows show which columns have a comma inside: the rows with one way, a text
 * above the table that speaks of decimals in a column, or numbers that have the same count of digits behind the comma in all rows in one
 * way alone. Rows that stay open are not among them.
 */
export function commonWays(cells: TableCells, heading: number, { clear, open }: Ways): Map<number, number[]> {
  const settled = new Map<number, number[]>();
  if (open.size === 0) return settled;
  const known = new Set([...clear].flatMap(([row, way]) => columnsOf(cells, row, way)));
  for (const [row, ways] of open) {
    const [way, ...others] = ways.filter((one) => columnsOf(cells, row, one).every((at) => known.has(at)));
    if (way && others.length === 0) settled.set(row, way);
  }
  const left = new Map([...open].filter(([row]) => !settled.has(row)));
  const columns = commonColumns(cells, heading, left);
  for (const [row, ways] of left) {
    const way = columns && wayWithin(cells, row, ways, columns);
    if (way) settled.set(row, way);
  }
  return settled;
}

/** The columns that have commas inside in all rows, where it is clear which they are. */
function commonColumns(
  cells: TableCells,
  heading: number,
  open: ReadonlyMap<number, readonly number[][]>,
): readonly number[] | undefined {
  const widest = [...open].sort(([one], [other]) => cells.width(other) - cells.width(one))[0];
  if (!widest) return undefined;
  const possible = widest[1]
    .map((way) => columnsOf(cells, widest[0], way))
    .filter((columns) => [...open].every(([row, ways]) => wayWithin(cells, row, ways, columns)));
  if (possible.length < 2) return possible[0];
  const named = columnsNamed(cells, heading);
  const said = possible.filter((columns) => columns.every((at) => named.has(at)));
  if (said.length === 1) return said[0];
  const even = possible.filter((columns) => areEven(cells, open, columns));
  return even.length === 1 && open.size >= fewestAlike ? even[0] : undefined;
}

/** The one way of a row that puts cells together in some columns alone. */
function wayWithin(
  cells: TableCells,
  row: number,
  ways: readonly number[][],
  columns: readonly number[],
): number[] | undefined {
  const within = ways.filter((way) => columnsOf(cells, row, way).every((at) => columns.includes(at)));
  return within.length === 1 ? within[0] : undefined;
}

/** The columns that are made of several cells in a way. */
export function columnsOf(cells: TableCells, row: number, way: readonly number[]): number[] {
  const end = cells.rowFirst[row + 1];
  return way.flatMap((first, column) => ((way[column + 1] ?? end) - first > 1 ? [column] : []));
}

/** The columns whose headings a text above the table names where it speaks of decimals. */
function columnsNamed(cells: TableCells, heading: number): ReadonlySet<number> {
  const named = new Set<number>();
  for (let row = 0; row < heading; row++) {
    const { start, end } = cells.rowSpan(row);
    const text = cells.text.slice(start, Math.min(end, start + longestLine));
    if (!decimals.test(text)) continue;
    const words = wordsOf(text).map(bareWord);
    for (let column = 0; column < cells.width(heading); column++) {
      const own = wordsOf(cells.value(cells.cell(heading, column))).map(bareWord);
      if (own.some((word) => word.length >= shortestWord && words.includes(word))) named.add(column);
    }
  }
  return named;
}

/** Whether all numbers of each of some columns have the same count of digits behind their commas. */
function areEven(
  cells: TableCells,
  open: ReadonlyMap<number, readonly number[][]>,
  columns: readonly number[],
): boolean {
  return columns.every((column) => {
    const counts = new Set<number>();
    for (const [row, ways] of open) {
      const way = wayWithin(cells, row, ways, columns);
      if (!way || !columnsOf(cells, row, way).includes(column)) continue;
      const last = (way[column + 1] ?? cells.rowFirst[row + 1]) - 1;
      counts.add(/^\d*/.exec(cells.value(last))?.[0].length ?? 0);
    }
    return counts.size === 1;
  });
}
