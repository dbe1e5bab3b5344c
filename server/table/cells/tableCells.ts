import type { TableCells } from './cells';
import { findDelimiter, isRuling, split } from './delimiter';
import { htmlCells, isHtmlTable } from './htmlCells';
import { readMarkdown } from './markdownCells';
import { plainLayout } from './plainLayout';
import { recordCells } from './recordCells';
import { joinSplitRows } from './splitRows';
import { splitWords, usualWidth } from './splitWords';
import { turnedTable } from './turnedTable';

/**
 * The cells of a text, a row for each zone: of an HTML or Markdown table, of records, or of lines parted by a character
 * or into columns. `undefined` where nothing parts the lines into cells.
 */
export function tableCells(text: string): TableCells | undefined {
  const html = isHtmlTable(text);
  const written = html ? text : plainLayout(text);
  const records = html ? undefined : recordCells(written);
  if (records) return records;
  const cells = html ? htmlCells(text) : writtenCells(written);
  return cells && (turnedTable(cells) ?? joinSplitRows(cells) ?? cells);
}

function writtenCells(text: string): TableCells | undefined {
  const delimiter = findDelimiter(text);
  const words = !delimiter || delimiter === 'columns' || delimiter === 'space' ? splitWords(text) : undefined;
  if (!delimiter) return words;
  const cells = split(text, delimiter);
  // Columns that are not kept take words for a cell, or a cell for several.
  if (words && usualWidth(words) !== usualWidth(cells)) return words;
  if (delimiter === 'space') cells.bySpaces = true;
  if (delimiter === 'bar' && hasRuling(cells)) readMarkdown(cells);
  return cells;
}

/** Whether a drawn line stands under the first lines, as under the headings of a Markdown table. */
function hasRuling(cells: TableCells): boolean {
  for (let row = 1; row < Math.min(cells.rowCount, 12); row++) if (isRuling(cells, row)) return true;
  return false;
}
