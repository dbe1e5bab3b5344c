import { audioEndings } from '../../model/fileNames';
import type { TableCells } from './cells';

const mostLooks = 200;
const mostColumns = 100;
/** Other signs than the dot before the ending of a file: a comma, and dots of other scripts. */
const otherDot = new RegExp(
  String.raw`^(.*[^\s,\uff0c])\s?[,\uff0c\uff0e\u3002\u00b7\u066b]\s?(${[...audioEndings].join('|')})$`,
  'iu',
);

/**
 * Puts a dot before the endings of files where another sign stands in a whole column, as when all dots of a table were made commas with
 * those of its numbers. It is told in the cells' assumptions.
 */
export function mendCommaEndings(cells: TableCells): void {
  const rows = Math.min(cells.rowCount, mostLooks);
  const counts = new Map<number, { other: number; filled: number }>();
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < Math.min(cells.width(row), mostColumns); column++) {
      const cell = cells.cell(row, column);
      if (cells.starts[cell] === cells.ends[cell]) continue;
      const count = counts.get(column) ?? { other: 0, filled: 0 };
      count.filled++;
      if (otherDot.test(cells.value(cell))) count.other++;
      counts.set(column, count);
    }
  for (const [column, { other, filled }] of counts) {
    if (other < 2 || other * 2 < filled) continue;
    let first = -1;
    for (let row = 0; row < cells.rowCount; row++) {
      const cell = cells.cell(row, column);
      const [, name, ending] = (cell >= 0 && otherDot.exec(cells.value(cell))) || [];
      if (name === undefined) continue;
      if (first < 0) first = cell;
      cells.rewritten.set(cell, `${name}.${ending}`);
    }
    const span = { start: cells.starts[first] ?? 0, end: cells.ends[first] ?? 0 };
    const text = `File names have another sign than a dot before their endings ("${cells.text.slice(span.start, span.end)}"); they are read with a dot ("${cells.value(first)}").`;
    cells.assumptions = [...cells.assumptions, { text, ...span }];
  }
}
