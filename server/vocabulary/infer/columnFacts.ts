import { isAudioFileName } from '../../model/fileNames';
import { readKey } from '../../trade/keyReading';
import { unitOf } from '../../trade/languages/cellWords';
import type { Unit } from '../../trade/meaning';
import { readPan } from '../../trade/panReading';
import { readNumberText } from '../forms/numberText';
import type { Column } from './column';

/** What the values of a place look like. */
export interface ColumnFacts {
  /** Rows that hold something. */
  filled: number;
  /** The number of each row, NaN where there is none. */
  numbers: Float64Array;
  /** How many are numbers, whole numbers, negative, note names, audio file names. */
  numeric: number;
  whole: number;
  negative: number;
  notes: number;
  files: number;
  least: number;
  greatest: number;
  /** What stands behind the numbers, blanks included, where it is the same everywhere. */
  unitText: string | undefined;
  unit: Unit | undefined;
  /** How often each text occurs, as long as they are few. */
  tally: ReadonlyMap<string, number>;
  isConstant: boolean;
  /** The most digits behind a decimal point. */
  decimals: number;
  /** How many are numbers in hexadecimal, such as `0x3C`. */
  hexadecimal: number;
  /** How many are numbers with a letter for a side, such as `50R`, or the letter of the centre. */
  sided: number;
  /** What stands between groups of three digits, where the values show that something does. */
  thousands: ThousandsMark | undefined;
  /** Whether the values are 0, 1, 2 ... or 1, 2, 3 ... in the order of the rows. */
  isCounting: boolean;
}

/** A mark between groups of three digits. */
export type ThousandsMark = ',' | '.' | ' ' | "'";

/** A text that is a range, as its two parts and what stands between them. */
export interface RangeText {
  first: string;
  between: string;
  second: string;
}

const mostTallied = 80;
const noteName = /^[A-Ga-g]\s?(?:#|♯|b|♭)?\s?-?\d{1,2}$/;
const end = String.raw`(?:[A-Ga-g](?:#|♯|b|♭)?-?\d{1,2}|[-+]?\d+(?:\.\d+)?(?:\s?(?:ms|msec|secs?|s|frames?|smp|samples|%|dB|ct|cents?|st)(?![a-z]))?)`;
const rangeText = new RegExp(
  String.raw`^(${end})(\s*(?:\.{2,3}|…|->|→|=>|(?:to|bis|thru|through|until|a|à)(?=\s)|[-–—:;,/~|_>+&])\s*|\s+)(${end})$`,
  'u',
);

const hexadecimal = /^\s*0x/i;
const endless = /^\s*[-−]?\s*(?:inf(?:inity)?|∞)\s*(?:dB|cB)?\s*$/i;
const sidedPan = /^(?:\p{L}+[\s:]?[\d.,]+\s?%?|[\d.,]+\s?%?\s?\p{L}+|\p{L}+)$/u;

/** Reads `36-48`, `C2 .. B2` or `0,127`; `undefined` for other texts. */
function readRangeText(text: string): RangeText | undefined {
  if (text.length > 60) return undefined;
  const found = rangeText.exec(text.trim());
  return found ? { first: found[1], between: found[2], second: found[3] } : undefined;
}

/** Whether a text is a note name with its octave, also as German, French, Spanish or Italian name notes. */
export function isNoteName(text: string): boolean {
  if (noteName.test(text.trim())) return true;
  if (text.length > 10 || !/^\s*[a-hdrmfslt]\p{L}{0,4}[#♯b♭]?\s?-?\d{1,2}\s*$/iu.test(text)) return false;
  const key = readKey(text);
  return key !== undefined && key.number === undefined;
}

/** Looks at what stands in a place; `mark` is what stands between thousands in others like it. */
export function columnFactsOf(texts: readonly (string | undefined)[], mark?: ThousandsMark): ColumnFacts {
  const numbers = new Float64Array(texts.length).fill(Number.NaN);
  const tally = new Map<string, number>();
  const facts = {
    filled: 0,
    numbers,
    numeric: 0,
    whole: 0,
    negative: 0,
    notes: 0,
    files: 0,
    least: Number.POSITIVE_INFINITY,
    greatest: Number.NEGATIVE_INFINITY,
    decimals: 0,
    hexadecimal: 0,
    sided: 0,
  };
  const thousands = thousandsIn(texts) ?? (mark !== undefined && fitsMark(texts, mark) ? mark : undefined);
  let next: number | undefined;
  let isCounting = true;
  let unitText: string | undefined;
  let unit: Unit | undefined;
  let first: string | undefined;
  let isConstant = true;
  for (const [row, text] of texts.entries()) {
    if (text === undefined) continue;
    facts.filled++;
    first ??= text;
    if (text !== first) isConstant = false;
    if (tally.size < mostTallied || tally.has(text)) tally.set(text, (tally.get(text) ?? 0) + 1);
    if (isNoteName(text)) facts.notes++;
    if (isAudioFileName(text)) facts.files++;
    if (sidedPan.test(text.trim()) && readPan(text) !== undefined) facts.sided++;
    if (endless.test(text)) {
      numbers[row] = Number.NEGATIVE_INFINITY;
      facts.numeric++;
      facts.whole++;
      if (/^\s*[-−]/.test(text)) facts.negative++;
      continue;
    }
    const read = readNumberText(thousands === undefined ? text : withoutMarks(text));
    if (next === undefined && (read?.number === 0 || read?.number === 1)) next = read.number;
    if (next === undefined || read?.number !== next++) isCounting = false;
    if (!read) continue;
    if (hexadecimal.test(text)) facts.hexadecimal++;
    if (read.unit !== '') {
      const behind = /[^\d.,][^\d]*$/u.exec(text.trimStart().replace(/^[-+−]/, ''))?.[0];
      const known = unitOf(read.unit);
      if (behind === undefined || read.unit.length > 12) continue;
      unitText ??= behind;
      unit ??= known;
    }
    numbers[row] = read.number;
    facts.numeric++;
    if (Number.isInteger(read.number)) facts.whole++;
    else facts.decimals = Math.max(facts.decimals, (text.split(/[.,]/)[1] ?? '').replace(/\D.*$/, '').length);
    if (read.number < 0) facts.negative++;
    facts.least = Math.min(facts.least, read.number);
    facts.greatest = Math.max(facts.greatest, read.number);
  }
  return {
    ...facts,
    thousands,
    unitText,
    unit,
    tally,
    isConstant,
    isCounting: isCounting && facts.filled > 1,
  };
}

const marked = /^\d{1,3}(?:([.,' \u00a0\u202f\u2009\u2019])\d{3})(?:\1\d{3})*$/;

/**
 * What stands between thousands: blanks and raised commas say so by themselves; points and commas where a number has two of
 * them, or where all with one have three digits behind it and others have none and are small.
 */
function thousandsIn(texts: readonly (string | undefined)[]): ThousandsMark | undefined {
  let mark: string | undefined;
  let isSure = false;
  let small = 0;
  for (const raw of texts) {
    const text = raw?.trim();
    if (text === undefined) continue;
    const found = marked.exec(text)?.[1];
    if (found === undefined) {
      if (!/^\d{1,3}$/.test(text)) return undefined;
      if (text !== '0') small++;
      continue;
    }
    if ((mark !== undefined && mark !== found) || /^0./.test(text)) return undefined;
    mark = found;
    if (!/[.,]/.test(found) || text.split(found).length > 2) isSure = true;
  }
  if (mark === undefined || !(isSure || small > 0)) return undefined;
  return mark === ',' || mark === '.' ? mark : /['\u2019]/.test(mark) ? "'" : ' ';
}

function fitsMark(texts: readonly (string | undefined)[], mark: ThousandsMark): boolean {
  return texts.every((text) => {
    if (text === undefined || /^\d{1,3}$/.test(text.trim())) return true;
    const found = marked.exec(text.trim())?.[1];
    return found !== undefined && !/^0./.test(text.trim()) && (mark === found || !/[.,]/.test(mark + found));
  });
}

function withoutMarks(text: string): string {
  return text.replace(/[.,'\s\u2019]/g, '');
}

/** The texts of a column. */
export function textsOf(column: Column): (string | undefined)[] {
  return column.cells.map((cell) => cell?.text);
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
  if (ranges === 0 || ranges * 2 < filled) return undefined;
  const [most] = [...between].sort((one, other) => other[1] - one[1]);
  return { first, second, between: most[0] };
}
