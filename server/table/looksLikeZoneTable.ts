import { isAudioFileName } from '../model/fileNames';
import { keyMeanings } from '../trade/meaning';
import type { TableCells } from './cells/cells';
import { isHtmlTable } from './cells/htmlCells';
import { tableCells } from './cells/tableCells';
import type { TableRows } from './cells/tableRows';
import { findTables } from './cells/tableRows';
import { readColumns } from './columns/columnMeaning';
import type { ColumnReading } from './columns/columnReading';

/** So much of a text is looked at. */
const looked = 16_384;
/** HTML has much between its cells. */
const lookedInHtml = 131_072;
const markup =
  /^[<{]|^\[\s*[[{"']|^[ \t]*(?:\/\/|#(?:define|include)\b)|(?:^|\s)[A-Za-z_]\w*=[^\s=]|(?:[)}\]];|\{)[ \t]*$/m;

/**
 * Tells quickly whether a text is a copied zone table: cells in columns, one of them names of samples and others
 * their keys. Where in doubt it is none, so that prose, source code, SFZ, XML and JSON are left alone.
 */
export function looksLikeZoneTable(text: string): boolean {
  const html = isHtmlTable(text);
  const start = html ? text.slice(0, lookedInHtml) : startOf(text);
  if (start.includes('\0') || (!html && markup.test(start.replace(/^\ufeff?\s*/, '')))) return false;
  const cells = tableCells(start);
  return cells !== undefined && findTables(cells).some((rows) => holdsZones(cells, rows));
}

function holdsZones(cells: TableCells, rows: TableRows): boolean {
  if (rows.data.length === 0) return false;
  const columns = readColumns(cells, rows);
  const sample = columns.find(({ meaning }) => meaning === 'sample');
  if (!sample) return false;
  let named = 0;
  let files = 0;
  for (const row of rows.data) {
    const name = cells.value(cells.cell(row, sample.index));
    if (name !== '') named++;
    if (isAudioFileName(name)) files++;
  }
  if (named === 0) return false;
  const keys = columns.filter(({ meaning }) => keyMeanings.includes(meaning));
  const headed = keys.filter(isHeaded);
  if (files * 2 > named) return headed.length > 0 || keys.length > (cells.bySpaces ? 1 : 0);
  return isHeaded(sample) && headed.length > 1 && columns.filter(isHeaded).length > 3;
}

function isHeaded(column: ColumnReading): boolean {
  return column.meaning !== 'unknown' && column.heading !== '' && column.confidence >= 0.6;
}

function startOf(text: string): string {
  if (text.length <= looked) return text;
  const cut = Math.max(text.lastIndexOf('\n', looked), text.lastIndexOf('\r', looked));
  return text.slice(0, cut > 0 ? cut : looked);
}
