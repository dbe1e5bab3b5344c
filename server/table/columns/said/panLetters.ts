import { readHeading } from '../../../trade/headings/headings';
import { panWord } from '../../../trade/languages/cellWords';
import type { Side } from '../../../trade/languages/sideBeginnings';
import { sidesByBeginning } from '../../../trade/languages/sideBeginnings';
import { bareWord } from '../../../trade/languages/spelling';
import type { LegendEntry } from '../../../trade/statements/legend';
import { legendIn } from '../../../trade/statements/legend';
import type { TableCells } from '../../cells/cells';
import type { TableRows } from '../../cells/tableRows';
import { shortened } from '../columnReading';

const mostColumns = 100;
const mostLetters = 12;
/** A word or the beginning of one before or behind a number, or alone. */
const lead = /^(\p{L}{1,15})\.?(?:[\s:=]{0,4}|[-\u2212\u2013])(%?\d.*)?$/u;
const trail = /^(%?\d[\d.,]*\s{0,2}%?)\s{0,2}(\(?\p{L}{1,15}\.?\)?)$/u;
/** A sign behind a word or around it. */
const signed = /\p{L}[^\p{L}\d\s%]|\(/u;
const written: Readonly<Record<Side, string>> = { left: 'L', right: 'R', centre: 'C' };

/**
 * Puts L, R and C in the place of other letters for sides in columns of pan positions: those that a text explains, as `B = bal`, and
 * those that are beginnings of words for sides in one language. Each is told in the cells' assumptions.
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
        const all = found.get(letter) ?? [];
        for (const { cell, text, isPlain } of all)
          if (because !== undefined || !isPlain) cells.rewritten.set(cell, text(written[side]));
        const [first] = all;
        if (!first || because === undefined || told.has(letter)) continue;
        const span = { start: cells.starts[first.cell], end: cells.ends[first.cell] };
        told.set(letter, { text: `"${first.written}" is read as ${side}, ${because}.`, ...span });
      }
    }
  }
  if (told.size > 0) cells.assumptions = [...cells.assumptions, ...told.values()];
}

/** A cell with a letter or a word, and its text with another one. */
interface Lettered {
  cell: number;
  written: string;
  /** Whether the word has no sign behind it or around it. */
  isPlain: boolean;
  text: (letter: string) => string;
}

/** What letters say: a side, and why it is read so; no reason for words that are known for it. */
type Sides = ReadonlyMap<string, { side: Side; because: string | undefined }>;

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
    const [, before, behind = ''] = lead.exec(plain) ?? [];
    const [, number = '', after = ''] = before === undefined ? (trail.exec(plain) ?? []) : [];
    const letters = before ?? after.replace(/[().]/g, '');
    const letter = bareWord(letters);
    if (letter === '') continue;
    if (!found.has(letter) && found.size >= mostLetters) return new Map();
    const text = (side: string) => (before === undefined ? `${number}${side}` : `${side}${behind}`);
    const one = { cell, written: letters, isPlain: !signed.test(plain), text };
    const list = found.get(letter);
    if (list) list.push(one);
    else found.set(letter, [one]);
  }
  return found;
}

/** What letters say by what a text explains otherwise than the word lists, or beside the others of their column in one language. */
function sidesOf(letters: readonly string[], legend: ReadonlyMap<string, LegendEntry>): Sides {
  const found = new Map<string, { side: Side; because: string | undefined }>();
  for (const letter of letters) {
    const entry = legend.get(letter);
    const side = entry && sideIn(entry.says);
    if (entry && side && side !== panWord(letter))
      found.set(letter, { side, because: `as "${shortened(entry.text)}" explains` });
  }
  const others = letters.filter((letter) => !found.has(letter));
  for (const [letter, { side, word }] of sidesByBeginning(others))
    found.set(letter, { side, because: side === panWord(letter) ? undefined : `the beginning of "${word}"` });
  return found;
}

/** The one side that the words of an explanation name. */
function sideIn(says: string): Side | undefined {
  const words = Array.from(says.slice(0, 60).matchAll(/\p{L}{2,}/gu), ([word]) => panWord(word));
  const sides = new Set(words.filter((one) => one === 'left' || one === 'right' || one === 'centre'));
  const [side] = sides;
  return sides.size === 1 ? side : undefined;
}
