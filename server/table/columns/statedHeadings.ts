import type { HeadingReading } from '../../trade/headings/headings';
import { readHeading } from '../../trade/headings/headings';
import type { TableCells } from '../cells/cells';
import type { TableRows } from '../cells/tableRows';
import { shortened } from './columnReading';

const sentences = /[.!?](?=\s|$)|[:\u2013\u2014](?=\s)/u;
const parting =
  /\s*(?:[,;|/\u2192\u3001\uff0c]|->)\s*|\s+(?:and|then|und|dann|et|puis|y|luego|e|poi|depois|en|och|sedan|og|ja|sitten|i|a|pak|и|και)\s+/iu;
const article =
  /^(?:the|its|a|der|die|das|le|la|les|l['\u2019]|el|los|las|il|lo|gli|i|o|os|as|de|het|den|det)\s+/iu;
const fewest = 3;
const longestItem = 60;

/**
 * Gives a table without headings those that a sentence around it lists, as `The columns are: file, lowest key, highest key, root`: as many as
 * the table has columns, of which all but one are understood. `lines` are the texts around, in their order.
 */
export function useStatedHeadings(
  cells: TableCells,
  tables: readonly TableRows[],
  lines: readonly string[],
): void {
  for (const table of tables) {
    if (table.headings.some(({ text }) => text !== '') || table.width < fewest) continue;
    const found = listIn(lines, table.width);
    if (!found) continue;
    for (const [index, heading] of table.headings.entries()) heading.text = found[index] ?? '';
    const span = cells.rowSpan(table.data[0] ?? 0);
    const text = `The columns are taken to be ${found.map((one) => `"${shortened(one)}"`).join(', ')}, as the text lists them.`;
    cells.assumptions = [...cells.assumptions, { text, ...span }];
  }
}

/** The one list of headings in some lines, which may go over two of them. */
function listIn(lines: readonly string[], width: number): string[] | undefined {
  for (const [at, line] of lines.entries()) {
    for (const text of [line, `${line} ${lines[at + 1] ?? ''}`]) {
      for (const sentence of text.split(sentences)) {
        const items = sentence.split(parting).map((item) => item.trim().replace(article, ''));
        // Words may lead to the list: `each line gives the file`.
        if (items.length === width && areHeadings(items)) return items;
      }
    }
  }
  return undefined;
}

function areHeadings(items: readonly string[]): boolean {
  if (items.some((item) => item === '' || item.length > longestItem)) return false;
  const readings = items.map((item) => readHeading(item));
  const known = readings.filter((one): one is HeadingReading => one !== undefined);
  const meanings = new Set(known.map(({ meaning }) => meaning));
  return known.length >= items.length - 1 && meanings.size === known.length && meanings.has('sample');
}
