import type { TableCells } from './cells';
import { findDelimiter, isRuling, split } from './delimiter';
import { htmlCells, isHtmlTable } from './htmlCells';
import { readMarkdown } from './markdownCells';
import { recordCells } from './recordCells';
import { joinSplitRows } from './splitRows';
import { turnedTable } from './turnedTable';

/**
 * The cells of a text, a row for each zone: of an HTML or Markdown table, of records, or of lines parted by a character
 * or into columns. `undefined` where nothing parts the lines into cells.
 */
export function tableCells(text: string): TableCells | undefined {
  const records = isHtmlTable(text) ? undefined : recordCells(text);
  if (records) return records;
  const cells = writtenCells(text);
  return cells && (turnedTable(cells) ?? joinSplitRows(cells) ?? cells);
}

function writtenCells(text: string): TableCells | undefined {
  if (isHtmlTable(text)) return htmlCells(text);
  const delimiter = findDelimiter(text);
  if (!delimiter) return undefined;
  const cells = split(text, delimiter);
  if (delimiter === 'space') cells.bySpaces = true;
  if (delimiter === 'bar' && hasRuling(cells)) readMarkdown(cells);
  return cells;
}

/** Whether a drawn line stands under the first lines, as under the headings of a Markdown table. */
function hasRuling(cells: TableCells): boolean {
  for (let row = 1; row < Math.min(cells.rowCount, 12); row++) if (isRuling(cells, row)) return true;
  return false;
}
