import { isAudioFileName } from '../../../model/fileNames';
import type { TableCells } from '../cells';

const strike = /\bline-through\b/i;
const classAttribute = /\sclass\s*=\s*(?:["']([^"'<>]*)|([^\s<>"']+))/i;
const strikingClass = /\.([\w-]{1,60})\s*\{[^{}]{0,2000}\bline-through/gi;
const mayStrike = /<(?:s|del|strike)[\s>]|line-through|~~|\[s\]|\u0336/i;
const struckStretch =
  /<(s|del|strike)(?:\s[^<>]*)?>[\s\S]*?<\/\1\s*>|<(span|font|p|div|b|i|em|strong)\s[^<>]*line-through[^<>]*>[\s\S]*?<\/\2\s*>|~~(?=\S)[\s\S]*?\S~~(?!~)|\[s\][\s\S]*?\[\/s\]|(?:[\p{L}\p{N}\p{P}\p{S}]\u0336+ ?\u0336*){2,}/giu;
/** Marks that are no tags; the last is a line over the letter before it. */
const strikingMark = /~~|\[\/?s\]|\u0336/giu;
const struckLine = /^\s*~~(?:(?!~~).)+~~\s*$/u;
const tag = /<[^<>]*>/g;
const visible = /[\p{L}\p{N}]/u;
const longestShown = 60;

/** Whether a tag, or the attributes of a cell or a row, strike out what stands in it, by itself or by one of some classes. */
export function strikesOut(markup: string, classes?: ReadonlySet<string>): boolean {
  if (strike.test(markup)) return true;
  if (classes === undefined || classes.size === 0) return false;
  const own = classAttribute.exec(markup);
  return (own?.[1] ?? own?.[2] ?? '').split(/\s+/).some((name) => classes.has(name));
}

/** The classes that a page with styles in it strikes out, as one copied out of a spreadsheet has them. */
export function strikingClasses(html: string): ReadonlySet<string> {
  if (!strike.test(html)) return new Set();
  return new Set(Array.from(html.matchAll(strikingClass), ([, name = '']) => name));
}

/** Leaves out what is struck out in cells of plain text, where it is marked as in Markdown and on message boards, or letter by letter. */
export function passOverStruck(cells: TableCells): void {
  if (!mayStrike.test(cells.text)) return;
  const struck = new StruckCells(cells);
  for (let row = 0; row < cells.rowCount; row++) {
    const { start, end } = cells.rowSpan(row);
    if (cells.filled(row) > 1 && struckLine.test(cells.text.slice(start, end))) {
      cells.struckRows.add(row);
      continue;
    }
    for (let cell = cells.rowFirst[row]; cell < cells.rowFirst[row + 1]; cell++) {
      const written = cells.value(cell);
      const rest = struck.read(cell, written).trim();
      if (rest !== written) cells.rewritten.set(cell, rest);
    }
    struck.endRow(row);
  }
}

interface StruckCell {
  cell: number;
  /** What is struck out, and what stands beside it. */
  struck: string;
  kept: string;
}

/**
 * Keeps what is struck out in the cells of a row until the row ends. A row is struck out with the file that it names, or with most of
 * what it holds; of other rows the struck values do not count, and what stands beside them does, with a note.
 */
export class StruckCells {
  #open: StruckCell[] = [];

  constructor(readonly cells: TableCells) {}

  /** The markup of a cell of the open row without what is struck out of it; all of it where nothing else is there. */
  read(cell: number, markup: string, isStruck = false): string {
    if (!isStruck && !mayStrike.test(markup)) return markup;
    const struck: string[] = isStruck ? [markup] : [];
    const rest = isStruck
      ? ''
      : markup.replace(struckStretch, (stretch) => {
          struck.push(stretch);
          return ' ';
        });
    const plain = (text: string) => text.replace(tag, '').replace(strikingMark, '').trim();
    const taken = plain(struck.join(' '));
    if (!visible.test(taken)) return markup;
    const isWhole = !visible.test(plain(rest));
    this.#open.push({ cell, struck: taken, kept: isWhole ? '' : plain(rest) });
    return isWhole ? markup.replace(strikingMark, '') : rest;
  }

  /** Settles the row that has just ended, whose cells its number tells. */
  endRow(row: number): void {
    const open = this.#open;
    if (open.length === 0) return;
    this.#open = [];
    const { cells } = this;
    if (this.#isRowStruck(row, open)) {
      cells.struckRows.add(row);
      return;
    }
    const told = open.map(({ cell, struck, kept }) => {
      const span = { start: cells.starts[cell], end: cells.ends[cell] };
      if (kept === '') cells.empty(row, cell);
      const what =
        kept === '' ? 'so the cell counts as empty' : `so "${kept.slice(0, longestShown)}" is taken`;
      return { text: `"${struck.slice(0, longestShown)}" is struck out, ${what}.`, ...span };
    });
    cells.assumptions = [...cells.assumptions, ...told];
  }

  #isRowStruck(row: number, open: readonly StruckCell[]): boolean {
    const { cells } = this;
    const whole = new Set(open.filter(({ kept }) => kept === '').map(({ cell }) => cell));
    let [filled, files] = [0, 0];
    for (let cell = cells.rowFirst[row]; cell < cells.rowFirst[row + 1]; cell++) {
      if (cells.starts[cell] === cells.ends[cell]) continue;
      filled++;
      if (!whole.has(cell) && isAudioFileName(cells.value(cell))) files++;
    }
    const isFileStruck = open.some(({ cell, struck }) => whole.has(cell) && isAudioFileName(struck));
    return isFileStruck ? files === 0 : whole.size * 2 > filled;
  }
}
