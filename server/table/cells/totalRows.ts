import { countsFiles, isTotal, isTotalAlone } from '../../trade/headings/sums';
import { lookAt } from '../columns/cellKinds';
import { evenlySpread } from '../columns/columnContents';
import type { TableCells } from './cells';
import { namesAudioFile } from './namesAudioFile';
import type { TableRows } from './tableRows';

/** So many rows tell how zones are written, and so many cells of a row are looked at. */
const looked = 200;
const mostCells = 60;
const fewestSummed = 3;
const mostSummed = 2000;

/**
 * Takes rows that sum up others out of the rows that may be zones, before they say something of what columns hold: those that begin with a
 * word for a sum where most others name audio files, and where names have no endings those of such a word alone that hold less than others.
 */
export function passTotals(cells: TableCells, tables: readonly TableRows[]): void {
  for (const table of tables) {
    const some = evenlySpread(table.data, looked);
    const files = some.filter((row) => namesFile(cells, row)).length;
    const haveEndings = files * 2 > some.length || (files > 0 && table.data.length <= 3);
    const widths = some.map((row) => cells.filled(row)).sort((a, b) => a - b);
    const usual = widths[widths.length >> 1] ?? 0;
    const isSum = (row: number) => {
      if (cells.filled(row) < 2) return false;
      const text = firstText(cells, row);
      if (haveEndings)
        return (
          !namesFile(cells, row) &&
          (isTotal(text) || isTotalAlone(text) || countsFiles(text) || holdsSum(cells, table, row))
        );
      return isTotalAlone(text) && cells.filled(row) < usual && !isRepeated(cells, table, row, text);
    };
    const sums = new Set(table.data.filter(isSum));
    if (sums.size === 0 || sums.size === table.data.length) continue;
    table.data = table.data.filter((row) => !sums.has(row));
    for (const row of sums) {
      table.sections.delete(row);
      table.others.push({ row, why: 'sums up other rows' });
    }
  }
}

/** Whether a number of a row without a file is the sum of those above it in its column, and others of it are missing. */
function holdsSum(cells: TableCells, { data, width }: TableRows, row: number): boolean {
  if (!/\p{L}|[\u03a3\u2211]/u.test(firstText(cells, row))) return false;
  const above = data.slice(0, Math.min(data.indexOf(row), mostSummed)).filter((one) => namesFile(cells, one));
  if (above.length < fewestSummed || data.indexOf(row) > mostSummed) return false;
  if (cells.filled(row) >= cells.filled(above[0] as number)) return false;
  for (let column = 0; column < Math.min(width, mostCells); column++) {
    const own = numberAt(cells, row, column);
    if (!(Math.abs(own) > 0)) continue;
    const numbers = above.map((one) => numberAt(cells, one, column)).filter(Number.isFinite);
    if (numbers.length < fewestSummed) continue;
    const sum = numbers.reduce((all, one) => all + one, 0);
    if (Math.abs(sum - own) < 1e-6) return true;
  }
  return false;
}

function numberAt(cells: TableCells, row: number, column: number): number {
  const { kind, value } = lookAt(cells.plain(cells.cell(row, column)));
  return kind === 'number' ? value : Number.NaN;
}

/** Whether other rows begin with the same text: then it names a group. */
function isRepeated(cells: TableCells, { data }: TableRows, row: number, text: string): boolean {
  return data.some((one) => one !== row && firstText(cells, one) === text);
}

/** The first cell of a row that holds something. */
function firstText(cells: TableCells, row: number): string {
  const width = Math.min(cells.width(row), mostCells);
  for (let column = 0; column < width; column++)
    if (!cells.isEmpty(row, column)) return cells.plain(cells.cell(row, column));
  return '';
}

function namesFile(cells: TableCells, row: number): boolean {
  const width = Math.min(cells.width(row), mostCells);
  for (let column = 0; column < width; column++)
    if (namesAudioFile(cells, cells.cell(row, column))) return true;
  return false;
}
