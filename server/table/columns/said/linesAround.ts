import { isHeadedAsCorrection } from '../../../trade/correctingWords';
import { unspacedLetter } from '../../../trade/languages/wordPattern';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import type { ColumnReading } from '../columnReading';

const mostLines = 100;
const longest = 600;
/** A sentence goes over so many lines at most. */
const mostWrapped = 3;
/** Words, or a sign that a word explains. */
const isOfWords = new RegExp(
  String.raw`^["'(]?[^\s\p{L}\d]{1,3}["')]?\s?[=:]\s?\p{L}{3}|\p{L}+\s\P{L}*\p{L}+(?:[\s.,;]|$)|${unspacedLetter}{2}`,
  'u',
);

/** Lines of words around the zones of a table; those that go on in the next line are put together. */
export function linesAround(
  cells: TableCells,
  { others: passed, data }: TableRows,
  sample: ColumnReading,
): { text: string; span: { start: number; end: number } }[] {
  // What was read of a list with its lines is told already.
  const told = new Set(cells.assumptions.map(({ start, end }) => `${start} ${end}`));
  const isTold = (row: number) => {
    const { start, end } = cells.rowSpan(row);
    return told.has(`${start} ${end}`);
  };
  const isLine = (row: number) =>
    cells.filled(row) < 3 &&
    !isTold(row) &&
    !cells.struckRows.has(row) &&
    (isOfWords.test(rowText(cells, row)) || isHeadedAsCorrection(rowText(cells, row)));
  const near = [...data.slice(0, 40), ...data.slice(-40)].filter(
    (row) => isLine(row) && (cells.filled(row) === 1 || cells.isEmpty(row, sample.index)),
  );
  const rows = [...new Set([...passed.map(({ row }) => row).filter(isLine), ...near])].sort((a, b) => a - b);
  const lines: { text: string; span: { start: number; end: number } }[] = [];
  for (let at = 0; at < Math.min(rows.length, mostLines); ) {
    const span = { ...cells.rowSpan(rows[at]) };
    const texts = [rowText(cells, rows[at])];
    let next = at + 1;
    while (rows[next] === rows[at] + texts.length && texts.length < mostWrapped) {
      texts.push(rowText(cells, rows[next]));
      span.end = cells.rowSpan(rows[next]).end;
      next++;
    }
    lines.push({ text: texts.join(' '), span });
    at = next;
  }
  return lines;
}

function rowText(cells: TableCells, row: number): string {
  const { start, end } = cells.rowSpan(row);
  if (cells.rowSpans === undefined) return cells.text.slice(start, Math.min(end, start + longest));
  const width = Math.min(cells.width(row), 10);
  return Array.from({ length: width }, (_, column) => cells.value(cells.cell(row, column))).join(' ');
}
