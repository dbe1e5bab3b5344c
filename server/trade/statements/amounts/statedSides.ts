import { panWord } from '../../languages/cellWords';

const longest = 1000;
const amount = String.raw`[-\u2212+]?\d+(?:[.,]\d+)?`;
/** One to four words. */
const words = String.raw`\p{L}+(?: \p{L}+){0,3} ?`;
/** A letter or a word right before a number, as in `L50`. */
const sided = /(?<![\p{L}\d])(\p{L}{1,12})\s?(\d{1,3})(?![\d.,]\d|\d)/gu;
/** A few words that explain a number, and a few that one stands behind. */
const behind = new RegExp(String.raw`(?<![\p{L}\d.,])(${amount})\s*%?\s*[=:(]?\s*(${words})`, 'gu');
const before = new RegExp(String.raw`(?<!\p{L})(${words})\s*(?:=|:)\s*(${amount})(?![\d.,]*\d)`, 'gu');

/** The numbers that a text gives for left and right: `-100 is left, 100 is right`, `L50 = hard left, R50 = hard right`. */
export function panEndsIn(written: string): { low: number; high: number } | undefined {
  const text = written.slice(0, longest);
  if (!/\d/.test(text)) return undefined;
  return lettered(text) ?? ordered(sidesIn(text, behind, 2, 1)) ?? ordered(sidesIn(text, before, 1, 2));
}

/** How far letters for both sides go, where it is the same number. */
function lettered(text: string): { low: number; high: number } | undefined {
  const most = new Map<string, number>();
  for (const [, word = '', number] of text.matchAll(sided)) {
    const isLetter = word.length === 1 && word === word.toUpperCase();
    const side = isLetter || word.length > 1 ? panWord(word) : undefined;
    if (side) most.set(side, Math.max(most.get(side) ?? 0, Number(number)));
  }
  const [left, right] = [most.get('left'), most.get('right')];
  return left !== undefined && left === right && left > 0 ? { low: 0 - left, high: left } : undefined;
}

function ordered(sides: ReadonlyMap<string, number>): { low: number; high: number } | undefined {
  const [left, right] = [sides.get('left'), sides.get('right')];
  return left !== undefined && right !== undefined && left < right ? { low: left, high: right } : undefined;
}

/** The first number of each side, by a pattern whose groups are words and a number. */
function sidesIn(text: string, pattern: RegExp, words: 1 | 2, number: 1 | 2): Map<string, number> {
  const found = new Map<string, number>();
  for (const match of text.matchAll(pattern)) {
    const list = (match[words] ?? '').match(/\p{L}+/gu) ?? [];
    const sides = new Set(list.filter((word) => word.length > 1 || !/[a-z]/i.test(word)).map(panWord));
    const side = sides.has('left') ? 'left' : sides.has('right') ? 'right' : undefined;
    const isBoth = sides.has('left') && sides.has('right');
    if (side && !isBoth && !found.has(side))
      found.set(side, Number((match[number] ?? '').replace('\u2212', '-').replace(',', '.')));
  }
  return found;
}
