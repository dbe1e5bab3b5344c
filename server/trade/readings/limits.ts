import { languages } from '../languages/languages';
import { bareWord } from '../languages/spelling';

/** A value that is one end of a range, the other being open. */
export interface Limit {
  /** The text of the value. */
  value: string;
  /** Whether the value is the least or the most of the range. */
  end: 'least' | 'most';
  /** Whether the value itself lies outside. */
  excluded: boolean;
}

const longest = 40;
const signs = /^(>=|=>|\u2265|\u2a7e|<=|=<|\u2264|\u2a7d|>|<)\s*(\S.*)$/u;
const words = (['least', 'most'] as const)
  .flatMap((end) =>
    languages.flatMap(({ limits }) => limits[end].map((word) => ({ word: bareWord(word), end }))),
  )
  .sort((a, b) => b.word.length - a.word.length);
const wholes: ReadonlySet<string> = new Set(languages.flatMap(({ limits }) => limits.all.map(bareWord)));

/**
 * Reads a range that is open at one end: `<64`, `≥ 64`, `64+`, `up to 63`, `ab 64`, `60 and up`, `64以上`; `undefined` for
 * anything else. The value itself is not looked at, but for a digit in it.
 */
export function limitIn(text: string): Limit | undefined {
  if (text.length > longest || !/\d/.test(text)) return undefined;
  const bare = text.trim();
  const sign = signs.exec(bare);
  if (sign) {
    const mark = sign[1];
    const end = /[>\u2265\u2a7e]/.test(mark) ? 'least' : 'most';
    return { value: sign[2], end, excluded: mark === '<' || mark === '>' };
  }
  if (bare.endsWith('+')) return { value: bare.slice(0, -1).trim(), end: 'least', excluded: false };
  if (!/\p{L}/u.test(bare)) return undefined;
  const plain = bareWord(bare).replace(/['\u2019]/g, ' ');
  for (const { word, end } of words) {
    const value = without(plain, word);
    if (value !== undefined) return { value, end, excluded: false };
  }
  return undefined;
}

/** Whether a text says that a range takes all there is: `all`, `alle`, `全部`. */
export function meansAll(text: string): boolean {
  return text.length <= longest && wholes.has(bareWord(text));
}

const lows = endWords('low');
const highs = endWords('high');

function endWords(part: 'low' | 'high'): ReadonlySet<string> {
  return new Set(
    languages.flatMap(({ parts }) => (parts[part] ?? []).map(bareWord)).filter((word) => word.length > 2),
  );
}

/** Whether a text says that one end of a range is open: `lowest`, `top`, `max`, or all there is. */
export function meansOpenEnd(text: string): boolean {
  if (text.length > longest) return false;
  const word = bareWord(text);
  return lows.has(word) || highs.has(word) || wholes.has(word);
}

const inAscii = /^[\x20-\x7e]*$/;

/** What is left of a text that starts or ends with a word. */
function without(text: string, word: string): string | undefined {
  for (const isFirst of [true, false]) {
    if (!(isFirst ? text.startsWith(word) : text.endsWith(word))) continue;
    const rest = isFirst ? text.slice(word.length) : text.slice(0, -word.length);
    const isApart = rest !== rest.trim() || /\d/.test(rest.at(isFirst ? 0 : -1) ?? '');
    if (isApart || !inAscii.test(word)) return rest.trim();
  }
  return undefined;
}
