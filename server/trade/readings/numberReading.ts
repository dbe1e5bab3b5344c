import { unitOf } from '../languages/cellWords';
import type { Unit } from '../meaning';
import { outOfWords } from '../rangeWords';

/** A number as a cell gives it. */
export interface NumberReading {
  number: number;
  /** The unit behind the number, where there is one. */
  unit: Unit | undefined;
}

const longest = 64;
const plain = /^-?\d{1,15}(?:\.\d{1,15})?$/;
const general =
  /^([+-]?)\s?(infinity|inf|∞|\d[\d.,'\u2019 \u00a0\u202f]{0,40}|[.,]\d{1,20})\s?([^\d\s].{0,20})?$/i;
const clock = /^(?:(\d{1,2}):)?(\d{1,3}):(\d{1,2}(?:[.,]\d{1,9})?)$/;
const fraction = /^([+-]?)\s?(?:(\d{1,6})[\s-])?\s?(\d{1,3})\s?[/\u2044]\s?(\d{1,3})\s?([^\d\s].{0,20})?$/;
const hexadecimal = /^(?:0x|\$)([\da-f]{1,8})$/i;
const compound =
  /^([+-]?)\s?(\d{1,6}(?:[.,]\d{1,6})?)\s?(\p{L}{1,15})\s?(?:[,;/&]\s?(?=[+-])|(?:and|und|et|y|e|en|och|og|ja|i|и|plus)\s(?=[+-]))?\s?([+-]?)\s?(\d{1,6}(?:[.,]\d{1,6})?)\s?([\p{L}\u00a2]{1,15})$/iu;
/** A number behind a sign for times; behind the letter one with a fraction. */
const factor = /^(?:[\u00d7\u2715]\s?|x\s?(?=\d+[.,]\d))(\d[\d.,]*)$/iu;
/** Turkish writes the sign before the number: `%30`. */
const percentFirst = /^([+-]?)\s?%\s?(\d[\d.,]*)$/u;
const minusSigns = /^[\u2212\u2010\u2011\u2013\u2014\uff0d]/;
const sequence = new RegExp(
  String.raw`^(?:\p{L}{1,12}[ ._#-]?|#)?(\d{1,3})(?:\.0+)?(?:\s?(?:/|${outOfWords})\s?(\d{1,3}))?$`,
  'iu',
);
const groups = /^(?!0)\d{1,3}(?:[.,'\u2019 \u00a0\u202f]\d{3})+$/;

/**
 * What a number is: any value; a count of `frames`, where marks between groups of three digits part thousands; or a `time`,
 * where they are decimal marks, as nothing lasts that long.
 */
export type NumberKind = 'value' | 'frames' | 'time';

/**
 * Reads a number with an optional sign (a real minus sign too), a decimal point or comma, and a known unit behind
 * it: `-3.5 dB`, `12 ct`, `−3,5`; a fraction: `-1 1/2`; a time: `00:01.250`; a number
 * of cents or of seconds in two units: `+1 st 20 ct`; a share with its sign first: `%30`; a factor: `×0.5`; or a hexadecimal number: `0x3C`. `-inf` is negative infinity. Of
 * frames, marks between groups of three digits part thousands: `44,100`, and of them and of times `1:20` is a time.
 * `undefined` for anything else.
 */
export function readNumber(text: string, kind: NumberKind = 'value'): NumberReading | undefined {
  if (text.length === 0 || text.length > longest) return undefined;
  const whole = kind !== 'value';
  if (plain.test(text) && !(kind === 'frames' && text.includes('.')))
    return { number: Number(text), unit: undefined };
  const multiplied = factor.exec(text.trim())?.[1];
  if (multiplied !== undefined) {
    const reading = readNumber(multiplied, kind);
    return reading && reading.unit === undefined ? { ...reading, unit: 'linear' } : undefined;
  }
  const signed = text.trim().replace(minusSigns, '-').replace(percentFirst, '$1$2%');
  const match = general.exec(signed);
  if (!match)
    return readTime(signed, whole) ?? readFraction(signed) ?? readCompound(signed) ?? readHexadecimal(signed);
  const [, sign, digits = '', word] = match;
  const unit = word === undefined ? undefined : unitOf(word);
  if (word !== undefined && unit === undefined)
    return readTime(signed, whole) ?? readFraction(signed) ?? readCompound(signed) ?? readHexadecimal(signed);
  const isTime = kind === 'time' || unit === 's' || unit === 'ms';
  const size = magnitude(digits.trim(), kind === 'frames' && !isTime);
  return Number.isNaN(size) ? undefined : { number: sign === '-' ? 0 - size : size, unit };
}

function magnitude(digits: string, whole: boolean): number {
  if (/^[i∞]/i.test(digits)) return Number.POSITIVE_INFINITY;
  if (whole && groups.test(digits)) return Number(digits.replace(/\D/g, ''));
  const marks = digits.replace(/\d/g, '');
  if (marks === '') return Number(digits);
  const last = marks.at(-1) as string;
  const decimal = (last === '.' || last === ',') && !marks.slice(0, -1).includes(last) ? last : '';
  const cut = decimal === '' ? digits.length : digits.lastIndexOf(decimal);
  const head = digits.slice(0, cut);
  if (/\D/.test(head) && !groups.test(head)) return Number.NaN;
  return Number(`${head.replace(/\D/g, '')}.${digits.slice(cut + 1)}`);
}

function readTime(text: string, whole: boolean): NumberReading | undefined {
  const [all, hours = '0', minutes, seconds] = clock.exec(text) ?? [];
  if (all === undefined || (!whole && !/[.,]/.test(all))) return undefined;
  const number = Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds?.replace(',', '.'));
  return { number, unit: 's' };
}

function readFraction(text: string): NumberReading | undefined {
  const match = fraction.exec(text);
  if (!match) return undefined;
  const [, sign, ones = '0', above, below, word] = match;
  const unit = word === undefined ? undefined : unitOf(word);
  if (Number(below) === 0 || (word !== undefined && unit === undefined)) return undefined;
  const size = Number(ones) + Number(above) / Number(below);
  return { number: sign === '-' ? 0 - size : size, unit };
}

/** A larger and a smaller unit side by side, of tunings also the smaller one first. The second sign may be left out only where the first is no minus. */
function readCompound(text: string): NumberReading | undefined {
  const match = compound.exec(text.replace(/[\u2212\u2010\u2011\u2013\u2014\uff0d]/g, '-'));
  if (!match) return undefined;
  const [, sign = '', first = '', firstWord = '', secondSign = '', second = '', secondWord = ''] = match;
  if (sign === '-' && secondSign === '') return undefined;
  const larger = Number(first.replace(',', '.')) * (sign === '-' ? -1 : 1);
  const smaller = Number(second.replace(',', '.')) * (secondSign === '-' ? -1 : 1);
  const units = `${unitOf(firstWord)} ${unitOf(secondWord)}`;
  if (units === 'cents semitones' && secondSign !== '')
    return { number: larger + smaller * 100, unit: 'cents' };
  if (units === 'semitones cents') return { number: larger * 100 + smaller, unit: 'cents' };
  return units === 's ms' ? { number: larger + smaller / 1000, unit: 's' } : undefined;
}

function readHexadecimal(text: string): NumberReading | undefined {
  const digits = hexadecimal.exec(text)?.[1];
  return digits === undefined ? undefined : { number: Number.parseInt(digits, 16), unit: undefined };
}

/** Reads a round robin position, with the number of positions where the cell gives it: `2`, `2/4`, `2 of 4`, `rr2`. */
export function readSequence(text: string): { position: number; length: number | undefined } | undefined {
  const match = sequence.exec(text.trim());
  if (!match) return undefined;
  return { position: Number(match[1]), length: match[2] === undefined ? undefined : Number(match[2]) };
}
