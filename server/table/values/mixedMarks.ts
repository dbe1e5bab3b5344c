import type { ColumnMeaning } from '../../trade/meaning';
import { positionMeanings } from '../../trade/meaning';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

const amounts: ReadonlySet<ColumnMeaning> = new Set(['volume', 'attenuation', 'tune', 'transpose', 'pan']);
/** So many rows are looked at. */
const mostLooked = 2000;

/** Notes, once for a column, that its numbers have decimal commas and points, or thousands parted in several ways. */
export function noteMixedMarks(table: ZoneCells): void {
  for (const column of table.columns) {
    const isPosition = positionMeanings.includes(column.meaning);
    if (!isPosition && !amounts.has(column.meaning)) continue;
    const marks = isPosition
      ? firstOfEach(table, column, /^\d{1,3}(?:([.,'\u2019 \u00a0\u202f])\d{3})+$/u)
      : firstOfEach(table, column, /^\D?\d+([.,])\d+(?!\d)/u);
    const [one, other] = marks.values();
    if (one === undefined || other === undefined) continue;
    const seen = `as in "${shortened(one)}" and "${shortened(other)}"`;
    table.noteColumn(
      column,
      isPosition
        ? `Thousands in ${columnName(column)} are parted by several signs, ${seen}. All of them are read as thousands.`
        : `Numbers in ${columnName(column)} have decimal commas and decimal points, ${seen}. Both are read as decimals.`,
    );
  }
}

/** By the mark that a pattern finds, the first cell of a column that has it. */
function firstOfEach(table: ZoneCells, column: ColumnReading, pattern: RegExp): Map<string, string> {
  const { cells, zones } = table;
  const found = new Map<string, string>();
  for (let zone = table.first; zone < Math.min(table.end, table.first + mostLooked); zone++) {
    const cell = table.cellOf(zones.rows[zone], column);
    if (cell < 0) continue;
    const text = cells.value(cell);
    const mark = text.length > 40 ? undefined : pattern.exec(text)?.[1];
    if (mark !== undefined && !found.has(mark)) found.set(mark, text);
  }
  return found;
}
