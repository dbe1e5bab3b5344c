import { isStillToCome, standsInBrackets } from '../trade/readings/stillToCome';
import type { TableCells } from './cells/cells';
import { namesAudioFile } from './cells/namesAudioFile';
import { columnName, shortened } from './columns/columnReading';
import type { Table } from './zones/zones';

/** Rows that are looked at for other texts; the first name ends the search. */
const mostLooks = 5000;

/**
 * Why tables whose columns of samples name none yet give no zones: all their cells say that they are still to come, or the same words in
 * brackets. `undefined` where a row may name one.
 */
export function lackOfSamples(cells: TableCells, tables: readonly Table[]): string | undefined {
  const texts = new Set<string>();
  let where: string | undefined;
  for (const { data, columns } of tables)
    for (const column of columns) {
      if (column.meaning !== 'sample') continue;
      for (const row of data.slice(0, mostLooks)) {
        const cell = cells.cell(row, column.index);
        if (namesAudioFile(cells, cell)) return undefined;
        const text = cells.value(cell).trim();
        // A line of text is no row of values.
        if (text === '' || cells.filled(row) === 1) continue;
        const isOpen = isStillToCome(text) || (data.length > 1 && standsInBrackets(text));
        if (!isOpen) return undefined;
        where ??= columnName(column);
        texts.add(text);
      }
    }
  const [first = ''] = texts;
  if (where === undefined || (texts.size > 1 && ![...texts].every(isStillToCome))) return undefined;
  return `No row names a sample yet: ${where} says "${shortened(first)}". Fill in the names of the audio files first.`;
}
