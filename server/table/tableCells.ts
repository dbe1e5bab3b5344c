import type { TableCells } from './cells';
import { findDelimiter, split } from './delimiter';
import { htmlCells, isHtmlTable } from './htmlCells';
import { joinSplitRows } from './splitRows';
import { turnedTable } from './turnedTable';

/**
 * The cells of a text, a row for each zone: of an HTML or Markdown table, or of lines parted by a character or into
 * columns. `undefined` where nothing parts the lines into cells.
 */
export function tableCells(text: string): TableCells | undefined {
  const cells = writtenCells(text);
  return cells && (turnedTable(cells) ?? joinSplitRows(cells) ?? cells);
}

function writtenCells(text: string): TableCells | undefined {
  if (isHtmlTable(text)) return htmlCells(text);
  const delimiter = findDelimiter(text);
  return delimiter && split(text, delimiter);
}
