import { readHeading } from '../../../trade/headings/headings';
import { panWord } from '../../../trade/languages/cellWords';
import { bareWord } from '../../../trade/languages/spelling';
import type { LegendEntry } from '../../../trade/statements/legend';
import { legendIn } from '../../../trade/statements/legend';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import { shortened } from '../columnReading';

type Side = 'left' | 'right' | 'centre';

const mostColumns = 100;
const mostLetters = 12;
/** A letter or two before or behind a number, or alone. */
const lead = /^(\p{L}{1,2})(\.?[\s:]*\d.*|\.?)$/u;
const trail = /^(\d[\d.,]*\s*%?\s*)(\p{L}{1,2})\.?$/u;
/** Letters for left and right that no word list may hold alone, since they are dynamics, notes or switches elsewhere. */
const pairs: readonly { left: string; right: string; where: string }[] = [
  { left: 'l', right: 'p', where: 'Polish and Czech' },
  { left: 'v', right: 'o', where: 'Finnish' },
  { left: 'b', right: 'j', where: 'Hungarian' },
  { left: 'l', right: 'd', where: 'some Slavic languages' },
  { left: 'α', right: 'δ', where: 'Greek' },
];
const written: Readonly<Record<Side, string>> = { left: 'L', right: 'R', centre: 'C' };

/**
 * Puts L, R and C in the place of other letters for sides in columns of pan positions: those that a text explains, as `B = bal`, and
 * those that are a pair of letters for left and right in one language. Each is told in the cells' assumptions.
 */
export function usePanLetters(
  cells: TableCells,
  tables: readonly TableRows[],
  texts: readonly string[],
): void {
  let legend: ReadonlyMap<string, LegendEntry> | undefined;
  const told = new Map<string, { text: string; start: number; end: number }>();
  for (const { headings, data, width } of tables) {
    for (let column = 0; column < Math.min(width, mostColumns); column++) {
      if (readHeading(headings[column]?.text ?? '')?.meaning !== 'pan') continue;
      const found = lettersIn(cells, data, column);
      legend ??= legendIn(texts);
      const sides = sidesOf([...found.keys()], legend);
      for (const [letter, { side, because }] of sides) {
        for (const { cell, text } of found.get(letter) ?? []) cells.rewritten.set(cell, text(written[side]));
        const [{ cell }] = found.get(letter) as [Lettered, ...Lettered[]];
        const span = { start: cells.starts[cell], end: cells.ends[cell] };
        if (!told.has(letter))
          told.set(letter, { text: `"${letter.toUpperCase()}" is read as ${side}, ${because}.`, ...span });
      }
    }
  }
  if (told.size > 0) cells.assumptions = [...cells.assumptions, ...told.values()];
}

/** A cell with a letter, and its text with another one. */
interface Lettered {
  cell: number;
  text: (letter: string) => string;
}

function lettersIn(
  cells: TableCells,
  data: readonly number[],
  column: number,
): ReadonlyMap<string, Lettered[]> {
  const found = new Map<string, Lettered[]>();
  for (const row of data) {
    const cell = cells.cell(row, column);
    if (cell < 0 || cells.ends[cell] === cells.starts[cell] || cells.digits(cell, 3) >= 0) continue;
    const plain = cells.plain(cell);
    const [, before, rest = ''] = lead.exec(plain) ?? [];
    const [, number = '', behind] = trail.exec(plain) ?? [];
    const letter = bareWord(before ?? behind ?? '');
    if (letter === '') continue;
    if (!found.has(letter) && found.size >= mostLetters) return new Map();
    const text = (side: string) => (before === undefined ? `${number}${side}` : `${side}${rest}`);
    const list = found.get(letter);
    if (list) list.push({ cell, text });
    else found.set(letter, [{ cell, text }]);
  }
  return found;
}

/** What letters say that a text explains otherwise than the word lists, or that make a pair with the others of their column. */
function sidesOf(
  letters: readonly string[],
  legend: ReadonlyMap<string, LegendEntry>,
): ReadonlyMap<string, { side: Side; because: string }> {
  const found = new Map<string, { side: Side; because: string }>();
  for (const letter of letters) {
    const entry = legend.get(letter);
    const side = entry && sideIn(entry.says);
    if (entry && side && side !== panWord(letter))
      found.set(letter, { side, because: `as "${shortened(entry.text)}" explains` });
  }
  const open = letters.filter((letter) => !found.has(letter) && panWord(letter) === undefined);
  if (open.length === 0) return found;
  const ends = letters.filter((letter) => panWord(letter) !== 'centre');
  const fitting = pairs.filter(({ left, right }) => ends.every((one) => one === left || one === right));
  const [pair] = fitting;
  if (!pair || fitting.length > 1) return found;
  for (const letter of open) {
    const side = letter === pair.left ? 'left' : 'right';
    found.set(letter, { side, because: `its letter in ${pair.where}` });
  }
  return found;
}

/** The one side that the words of an explanation name. */
function sideIn(says: string): Side | undefined {
  const words = Array.from(says.slice(0, 60).matchAll(/\p{L}{2,}/gu), ([word]) => panWord(word));
  const sides = new Set(words.filter((one) => one === 'left' || one === 'right' || one === 'centre'));
  const [side] = sides;
  return sides.size === 1 ? side : undefined;
}
