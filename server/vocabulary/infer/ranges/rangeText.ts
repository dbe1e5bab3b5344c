import { outOfWords, rangeWords } from '../../../trade/rangeWords';

/** A text that is a range, as its two parts and what stands between them. */
export interface RangeText {
  first: string;
  between: string;
  second: string;
}

const end = String.raw`(?:(?:[Dd][oó]|[Uu]t|[Rr][eé]|[Mm]i|[Ff][aá]|[Ss]ol|[Ll][aá]|[SsTt]i)(?:#|♯|b|♭)?-?\d{1,2}|[A-Ga-g](?:#|♯|b|♭)?-?\d{1,2}|[-+]?\d+(?:\.\d+)?(?:\s?(?:ms|msec|secs?|s|frames?|smp|samples|%|dB|ct|cents?|st)(?![a-z]))?)`;
const rangeText = new RegExp(
  String.raw`^(${end})(\s*(?:\.{2,3}|…|->|→|=>|${rangeWords}(?=\s)|${outOfWords}(?=\s)|[-–—:;,/~～〜|_>+&÷↔⟷⇔])\s*|\s+)(${end})$`,
  'u',
);

/** One number with a comma and a unit: `-4,5 dB`. */
const decimal = /^\s*[-+−]?\d+,\d+\s*(?:dB|ms|msec|secs?|s|%|ct|cents?|st|Hz)\s*$/i;

/** Reads `36-48`, `C2 .. B2` or `0,127`; `undefined` for other texts. */
export function readRangeText(text: string): RangeText | undefined {
  if (text.length > 60 || decimal.test(text)) return undefined;
  const found = rangeText.exec(text.trim());
  return found ? { first: found[1], between: found[2], second: found[3] } : undefined;
}

/** The parts of the ranges in a column, where most of its texts are ranges. */
export function rangesOf(
  texts: readonly (string | undefined)[],
): { first: (string | undefined)[]; second: (string | undefined)[]; between: string } | undefined {
  const between = new Map<string, number>();
  const first: (string | undefined)[] = [];
  const second: (string | undefined)[] = [];
  let filled = 0;
  let ranges = 0;
  for (const text of texts) {
    const range = text === undefined ? undefined : readRangeText(text);
    if (text !== undefined) filled++;
    if (range) {
      ranges++;
      between.set(range.between, (between.get(range.between) ?? 0) + 1);
    }
    first.push(range ? range.first : text);
    second.push(range ? range.second : text);
  }
  if (ranges === 0 || ranges * 2 < filled || areDecimals(texts)) return undefined;
  const [most] = [...between].sort((one, other) => other[1] - one[1]);
  return { first, second, between: most[0] };
}

/** Two whole numbers with a comma and no blank between. */
const commaPair = /^\s*[-+]?(\d+),(\d+)\s*$/;

/**
 * Whether commas stand before decimals: no range goes down in one place and up in another, and no end of one begins with 0 as `0,05` does.
 */
function areDecimals(texts: readonly (string | undefined)[]): boolean {
  let [up, down, isPadded] = [0, 0, false];
  for (const text of texts) {
    if (text === undefined || /^\s*[-+]?\d+\s*$/.test(text)) continue;
    const [, first = '', second = ''] = commaPair.exec(text) ?? [];
    if (second === '') return false;
    if (Number(first) > Number(second)) down++;
    else up++;
    isPadded ||= /^0\d/.test(second) && !/^0\d/.test(first);
  }
  return isPadded || (up > 0 && down > 0);
}

/** Whether texts are positions out of how many there are, each position of a number occurring: `1/2`, `2 of 2`. */
export function areTurns(texts: readonly (string | undefined)[]): boolean {
  const found = new Map<number, Set<number>>();
  for (const text of texts) {
    if (text === undefined) continue;
    const [, position, count] = turnText.exec(text.trim()) ?? [];
    const [at, most] = [Number(position), Number(count)];
    if (!(at >= 1 && at <= most && most <= mostTurns)) return false;
    const positions = found.get(most) ?? new Set();
    positions.add(at);
    found.set(most, positions);
  }
  return [...found].some(([most]) => most > 1) && [...found].every(([most, { size }]) => size === most);
}

const turnText = new RegExp(String.raw`^(\d{1,2})\s*(?:/|${outOfWords})\s*(\d{1,2})$`, 'iu');
/** Nobody records so many takes of one note. */
const mostTurns = 64;
