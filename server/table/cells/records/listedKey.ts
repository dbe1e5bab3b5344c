import { readKeyRange } from '../../../trade/readings/keyReading';
import { letterNote } from '../../../trade/readings/notePatterns';

/** What may stand before a line of a list. */
export const bullet = /^[ \t\u00a0]*(?:[*\u2022\u2023\u25e6+-][ \t\u00a0]+)?/;
const key = String.raw`[[(]?(${letterNote}-?\d{1,2}|\d{1,3})`;
const more = String.raw`((?:[ ]?[-\u2013\u2014\u2192~][ ]?|[ ]?\.{2,3}[ ]?|[ ]to[ ])(?:${letterNote}-?\d{1,2}|\d{1,3})(?![\d.,]*\s?(?:dB|ct|cents?|%)))?`;
const parting = String.raw`[\])]?[ \u00a0]*(?:->|=>|[-\u2013\u2014:=\u2192.)>])?[ \u00a0]*`;
/** A key, or two, before a name. */
export const keyFirst = new RegExp(
  `^${key}${more}(?=[^\\p{L}\\p{N}#])${parting}([\\p{L}\\p{N}_("'./~].*)$`,
  'u',
);
/** The same behind a name. */
export const keyLast = new RegExp(`^(.*\\.\\w{2,5})${parting}(?<![\\p{L}\\p{N}])${key}${more}[\\])]?$`, 'u');

/** The same right behind a name, with more behind it. */
export const keyBehind = new RegExp(
  String.raw`^${parting}(?<![\p{L}\p{N}])${key}${more}[\])]?(?=[\s,;([]|$)`,
  'u',
);

/** Whether a text is a key or a range of keys, of 0 to 127. */
export function isKey(text: string): boolean {
  const range = readKeyRange(text);
  return range !== undefined && (range.low.number ?? 0) <= 127 && (range.high.number ?? 0) <= 127;
}
