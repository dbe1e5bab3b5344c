import { languages } from './headingWords';
import type { ColumnMeaning, Unit } from './meaning';
import { unitOf } from './meaning';

/** What a heading says of its column. */
export interface HeadingReading {
  meaning: ColumnMeaning;
  /** The unit that stands in brackets or as the last word. */
  unit: Unit | undefined;
}

const longest = 80;
const words = expand();

/**
 * Finds what a heading such as `Low Key`, `loKey`, `Volume (dB)` or `Tune in cents` means; `undefined` for one whose
 * words are not known.
 */
export function readHeading(text: string): HeadingReading | undefined {
  const reading = findHeading(text);
  // A pitch in cents or semitones is no key but a tuning.
  if (reading?.meaning === 'pitch_keycenter' && reading.unit === 'cents')
    return { ...reading, meaning: 'tune' };
  if (reading?.meaning === 'pitch_keycenter' && reading.unit === 'semitones')
    return { ...reading, meaning: 'transpose' };
  return reading;
}

function findHeading(text: string): HeadingReading | undefined {
  if (text.length === 0 || text.length > longest) return undefined;
  const whole = words.get(compact(text));
  const bracket = /^([^([{]*)[([{]([^)\]}]*)[)\]}]?(.*)$/.exec(text);
  if (whole) return { meaning: whole, unit: unitOf(bracket?.[2] ?? signUnit(text)) };
  if (bracket) {
    const meaning = words.get(compact(`${bracket[1]} ${bracket[3]}`));
    if (meaning) return { meaning, unit: unitOf(bracket[2] as string) };
  }
  const last = /^(.*?)(?:\s+in)?[\s,/:_-]+([^\s,/:_-]+)$/.exec(text.trim());
  const unit = last ? unitOf((last[2] as string).replace(/[()[\]{}]/g, '')) : undefined;
  if (last && unit) {
    const meaning = words.get(compact(last[1] as string));
    if (meaning) return { meaning, unit };
  }
  return undefined;
}

const totals: ReadonlySet<string> = new Set(languages.flatMap((language) => language.totals));

/** Whether a row that starts with this text sums up others. */
export function isTotal(text: string): boolean {
  const word = /^\p{L}+/u.exec(text.slice(0, 40))?.[0];
  return word !== undefined && totals.has(word.toLowerCase());
}

/** A sign that is a unit at the end of a heading, as in `Volume %`; else the heading itself. */
function signUnit(text: string): string {
  return text.endsWith('%') ? '%' : text;
}

/** Letters and digits in lower case; a heading of signs alone stays as it is. */
function compact(text: string): string {
  const letters = text
    .toLowerCase()
    .replaceAll('#', 'number')
    .replace(/[^\p{L}\p{N}]/gu, '');
  return letters === '' ? text.trim() : letters;
}

function expand(): ReadonlyMap<string, ColumnMeaning> {
  const map = new Map<string, ColumnMeaning>();
  for (const { parts, phrases } of languages) {
    for (const [meaning, list] of Object.entries(phrases) as [ColumnMeaning, readonly string[]][]) {
      // A phrase written out counts before one that is put together from parts.
      for (const phrase of list) if (!phrase.includes('{')) set(map, phrase, meaning);
    }
    for (const [meaning, list] of Object.entries(phrases) as [ColumnMeaning, readonly string[]][]) {
      for (const phrase of list) for (const written of fill(phrase, parts)) set(map, written, meaning);
    }
  }
  return map;
}

function set(map: Map<string, ColumnMeaning>, phrase: string, meaning: ColumnMeaning): void {
  const key = compact(phrase);
  if (!map.has(key)) map.set(key, meaning);
}

function fill(phrase: string, parts: Readonly<Record<string, readonly string[]>>): string[] {
  const slot = /\{(\w+)\}/.exec(phrase);
  if (!slot) return [phrase];
  const choices = parts[slot[1] as string] ?? [];
  return choices.flatMap((word) => fill(phrase.replace(slot[0], word), parts));
}
