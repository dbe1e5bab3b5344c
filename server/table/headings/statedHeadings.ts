import type { HeadingReading } from '../../trade/headings/headings';
import { readHeading } from '../../trade/headings/headings';
import { bareWord } from '../../trade/languages/spelling';
import { pairedEnds } from '../../trade/rangeWords';
import type { TableCells } from '../cells/cells';
import type { TableRows } from '../cells/tableRows';
import { shortened } from '../columns/columnReading';

const sentences = /[.!?](?=\s|$)|[:\u2013\u2014](?=\s)/u;
const parting =
  /\s*(?:[,;|/\u2192\u3001\uff0c]|->)\s*|\s+(?:and|then|und|dann|et|puis|y|luego|e|poi|depois|en|och|sedan|og|ja|sitten|i|a|pak|и|και)\s+/iu;
const article =
  /^(?:(?:then|dann|puis|luego|poi|depois|dan|sedan)\s+)?(?:(?:the|its|a|der|die|das|le|la|les|l['\u2019]|el|los|las|il|lo|gli|i|o|os|as|de|het|den|det)\s+)?/iu;
const bracketed = /\([^()]{1,60}\)|\[[^[\]]{1,60}\]/g;
/** Characters for private use, from here on. */
const firstHidden = 0xe000;
const ends: ReadonlySet<string> = new Set(pairedEnds.flat());
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
      // What stands in brackets may explain one of the columns, or be the whole list.
      for (const one of new Set([text, text.replace(bracketed, hidden)])) {
        for (const sentence of one.split(sentences)) {
          const items = withBothEnds(itemsOf(sentence));
          // Words may lead to the list: `each line gives the file`.
          if (items.length === width && areHeadings(items)) return items;
        }
      }
    }
  }
  return undefined;
}

/** What a sentence lists, which may stand in brackets as a whole. */
function itemsOf(sentence: string): string[] {
  const list = /^\s*[([](.*)[)\]]\s*$/su.exec(sentence)?.[1] ?? sentence;
  return list.split(parting).map((item) => shown(item).trim().replace(article, ''));
}

/** A word for an end alone goes with the subject of the one before it: `velocity from and to`. */
function withBothEnds(items: readonly string[]): string[] {
  return items.map((item, at) => {
    if (!ends.has(bareWord(item))) return item;
    const subject = items[at - 1]?.split(' ').slice(0, -1).join(' ') ?? '';
    const whole = `${subject} ${item}`;
    return subject !== '' && readHeading(whole) ? whole : item;
  });
}

/** Signs that part a list, as others that stand in no text. */
function hidden(bracket: string): string {
  return bracket.replace(/[,;|:.]/g, (sign) => String.fromCharCode(firstHidden + sign.charCodeAt(0)));
}

function shown(text: string): string {
  return text.replace(/[\ue000-\ue07f]/g, (sign) => String.fromCharCode(sign.charCodeAt(0) - firstHidden));
}

function areHeadings(items: readonly string[]): boolean {
  if (items.some((item) => item === '' || item.length > longestItem)) return false;
  const readings = items.map((item) => readHeading(item));
  const known = readings.filter((one): one is HeadingReading => one !== undefined);
  const meanings = new Set(known.map(({ meaning }) => meaning));
  return known.length >= items.length - 1 && meanings.size === known.length && meanings.has('sample');
}
