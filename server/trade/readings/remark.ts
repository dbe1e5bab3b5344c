import { unitOf } from '../languages/cellWords';
import { givesMeasuredUnit } from '../languages/measuredWords';
import { readKeyRange } from './keyReading';
import { limitIn, meansOpenEnd } from './limits';

/** A value and what somebody remarks on it. */
export interface Remarked {
  value: string;
  remark: string;
}

const longest = 200;
const longestValue = 24;
/** A sign that no value has, or a word behind a blank. */
const behind =
  /^(.*?[\p{L}\p{N}%♯♭])(\s*[?!*†‡※]+(?:\s.*)?|\s*(?:<-|<=|\u2190|\u21d0|\/\/|--).*|\s*※.*|\s+#.*|\s*[([{].*|\s*,\s+\p{L}.*|\s*;.*|\s+\p{L}{2,}.*)$/u;
/** A sign between two values as well, so that words have to stand behind it: `42 - new!`, `36: kick`, `46 = open`. */
const dashed =
  /^(.*?[\p{L}\p{N}%♯♭])(\s*[-\u2010-\u2015\u2212:=]\s+["'\u201c\u201e\u00ab(]?(\p{L}[^\s,;.!?)]*).*)$/u;
const before =
  /^(~|\u2248|\?|ca\.?(?=[\s\d])|c\.\s|circa\s|approx\.?\s|about\s|etwa\s|env(?:iron|\.)?\s)\s*(\S.*)$/iu;

/** Another amount behind one: `−20 ct`, `and +5 ct`, `, -3 ct`, `20 ct`, `-20`. */
const amountBehind =
  /^\s*(?:[,;/&]\s*|(?:and|und|et|y|e|en|och|og|ja|i|и|plus)\s)?\s*([-+\u2212\u2010\u2011\u2013]\s?)?\d+(?:[.,]\d+)?(?:\s?([\p{L}%\u00a2]+))?(?![\d.,]*\d)/iu;

/** A unit that starts a remark belongs to the value before it, and so does another amount: half of a sum is no value. */
function withUnit(value: string, rest: string): [value: string, rest: string] {
  const [first = '', unit = ''] = /^\s*([\p{L}%]+)/u.exec(rest) ?? [];
  const isUnit = unit !== '' && (unitOf(unit) !== undefined || givesMeasuredUnit(unit));
  const [own, behindIt] = isUnit ? [value + first, rest.slice(first.length)] : [value, rest];
  const other = amountGoingOn(unit, behindIt);
  return [own + other, behindIt.slice(other.length)];
}

/** The amount that goes on behind one with a unit; without a sign or a unit of its own only that of a tuning does. */
function amountGoingOn(unit: string, behind: string): string {
  const found = amountBehind.exec(behind);
  if (!found) return '';
  const [first, second] = [unitOf(unit), found[2] === undefined ? undefined : unitOf(found[2])];
  const isTuning = first === 'semitones' && (second === 'cents' || (found[2] === undefined && found[1]));
  const isSigned = first !== undefined && second !== undefined && found[1] !== undefined;
  return isTuning || isSigned ? found[0] : '';
}

/**
 * Parts a value from a remark on it: `52?`, `56 <- check`, `67 # later 72`, `4 (was 1)`, `~60`; `undefined` for a text without
 * one. What is behind the value is no remark where it starts with a unit. Whether the value is one, the caller has to see.
 */
export function remarkIn(text: string): Remarked | undefined {
  if (text.length > longest || !/\d/.test(text)) return undefined;
  const lead = before.exec(text.trim());
  if (lead) return { value: lead[2], remark: lead[1].trim() };
  const found = dashedRemark(text.trim()) ?? behind.exec(text.trim());
  if (!found) return undefined;
  const [value, rest] = withUnit(found[1], found[2]);
  if (value.length > longestValue || !/\d/.test(value) || rest === '') return undefined;
  return { value: value.trim(), remark: rest.trim() };
}

/** A value with a remark behind a dash; none where the words are the other end of a range. */
function dashedRemark(text: string): RegExpExecArray | undefined {
  const found = dashed.exec(text);
  if (!found) return undefined;
  const [, value, rest, word] = found;
  const words = rest.replace(/^\s*\S\s*/u, '');
  const isEnd =
    readKeyRange(word) !== undefined ||
    readKeyRange(words) !== undefined ||
    // `40 - top`, and not `36 - top drum`
    meansOpenEnd(words.replace(/\s*[,;(?!].*$/u, '')) ||
    limitIn(`${value} ${words}`) !== undefined;
  return isEnd ? undefined : found;
}
