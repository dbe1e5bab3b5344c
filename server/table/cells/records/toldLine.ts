import { audioEndingInText } from '../../../model/fileNames';
import type { Stretch } from '../../../model/text/stretch';
import type { ColumnMeaning } from '../../../trade/meaning';
import { keyMeanings } from '../../../trade/meaning';
import type { ToldValue } from '../../../trade/phrases/clause';
import { letterNote } from '../../../trade/readings/notePatterns';
import type { PlacedValue } from './clauseReader';
import { barePair, ClauseReader, clausesIn } from './clauseReader';
import { onlyKeyIn } from './onlyKey';
import { introducesFile, wordsBeforeFile } from './wordsBeforeFile';

/** A line that tells of one file in words. */
export interface ToldLine {
  /** The number or the key before all else, as in `4. a.wav` and `36: a.wav`. */
  lead: (Stretch & { text: string; sign: string }) | undefined;
  file: Stretch | undefined;
  values: readonly PlacedValue[];
  /** Clauses that are not understood. */
  rest: readonly Stretch[];
}

/** A line of the text with what it tells. */
export interface TextLine extends Stretch {
  /** `undefined` for text that names no file and stands in no list. */
  told: ToldLine | undefined;
}

const longestLine = 600;
const rangeMeanings: readonly ColumnMeaning[] = ['key', 'key_range', 'lokey', 'hikey'];
/** A name in quotation marks, or one without blanks. */
const named = new RegExp(
  String.raw`["'\u201c\u201e\u00ab\x60]([^"'\u201d\u00bb\x60]{1,120}${audioEndingInText})["'\u201d\u201c\u00bb\x60]|([^\s"',;:()[\]\uff0c\uff1b\uff1a\u3001\u201c\u201e\u00ab\x60]{1,120}${audioEndingInText})`,
  'giu',
);
const lead = new RegExp(
  String.raw`^[ \t\u00a0]*(?:[*\u2022\u2023\u25e6\u2013\u2014-][ \t\u00a0]+)?(?:(${letterNote}-?\d|\d{1,3})[ \u00a0]?([.)\u3001\uff0e:=\uff1a\u2013-])[ \t\u00a0]*(?![\d.]|${letterNote}-?\d))?`,
  'u',
);

/** Whether a line may tell of a file: one is named, and no sign parts it into cells. */
export function namesOneFile(line: string): boolean {
  if (line.length > longestLine || /[\t|]/.test(line)) return false;
  return (line.match(named)?.length ?? 0) === 1;
}

/** Whether a line names a file, or more. */
export function namesAnyFile(line: string): boolean {
  named.lastIndex = 0;
  return line.length <= longestLine && named.test(line);
}

/**
 * What a line tells; `legend` reads clauses that only the text explains. In a sentence (`isSentence`) the words before a file are no part
 * of its name, and those that tell nothing are passed over.
 */
export function toldLineIn(
  text: string,
  { start, end }: Stretch,
  legend: (clause: string) => ToldValue | undefined,
  isSentence = false,
): ToldLine {
  const line = isSentence ? text.slice(start, end).replace(/[\r\n]/g, ' ') : text.slice(start, end);
  const found = lead.exec(line);
  const from = found?.[0].length ?? 0;
  const number = found?.[1];
  const first =
    number === undefined
      ? undefined
      : {
          text: number,
          sign: found?.[2] ?? '',
          start: start + line.indexOf(number),
          end: start + line.indexOf(number) + number.length,
        };
  const clauses = new ClauseReader(line, legend);
  const file = isSentence ? fileInSentence(line) : fileIn(line, from, clauses);
  const before = file ? clausesIn(line, from, file.from) : [];
  const parts = file
    ? [
        ...(isSentence
          ? before.filter((part) => clauses.valuesIn(part) || /\d/.test(line.slice(part.start, part.end)))
          : before),
        ...clausesIn(line, file.end, line.length),
      ]
    : clausesIn(line, from, line.length);
  const values: PlacedValue[] = [];
  const rest: Stretch[] = [];
  const known = new Set<ColumnMeaning>();
  for (const part of parts) {
    const told = clauses.valuesIn(part);
    const isNew = told?.every(({ meaning }) => !known.has(meaning));
    if (!told || !isNew) rest.push({ start: start + part.start, end: start + part.end });
    else
      for (const value of told) {
        known.add(value.meaning);
        values.push({ ...value, start: start + value.start, end: start + value.end });
      }
  }
  const around = known.has('key_range') ? undefined : rangeAround(text, values, rest);
  const hasKeys = around || rangeMeanings.some((one) => known.has(one));
  const only = hasKeys ? undefined : onlyKeyIn(text, values, rest);
  if (only) values.push(only.key);
  return {
    lead: first,
    file: file && { start: start + file.start, end: start + file.end },
    values: around ? [...values, around] : values,
    rest: rest.filter((one) => one.start !== around?.start && !only?.used.includes(one)),
  };
}

/** The one pair of numbers without a word that the root lies between: `a.wav (48-57) root 55`. */
function rangeAround(
  text: string,
  values: readonly PlacedValue[],
  rest: readonly Stretch[],
): PlacedValue | undefined {
  const root = Number(values.find(({ meaning }) => meaning === 'pitch_keycenter')?.text);
  const [only, ...others] = rest.flatMap((one) => {
    const [, low = '', high = ''] = barePair.exec(text.slice(one.start, one.end)) ?? [];
    const isAround = Number(low) <= root && root <= Number(high) && Number(high) <= 127;
    return isAround ? [{ ...one, text: `${low} \u2013 ${high}` }] : [];
  });
  if (!only || others.length > 0) return undefined;
  return { ...only, meaning: 'key_range', isNamed: true };
}

/** What a part of a line tells of a file: values, and clauses that are not understood. */
export function toldIn(text: string, { start, end }: Stretch): Pick<ToldLine, 'values' | 'rest'> {
  const line = text.slice(start, end);
  const values: PlacedValue[] = [];
  const rest: Stretch[] = [];
  const clauses = new ClauseReader(line, () => undefined);
  for (const part of clausesIn(line, 0, line.length)) {
    const told = clauses.valuesIn(part);
    const isNew = told?.every(({ meaning }) => values.every((one) => one.meaning !== meaning));
    if (!told || !isNew) rest.push({ start: start + part.start, end: start + part.end });
    else for (const one of told) values.push({ ...one, start: start + one.start, end: start + one.end });
  }
  return { values, rest };
}

/** Whether a line gives keys, by its words or before all else. */
export function givesKeys({ values }: ToldLine): boolean {
  return values.some(({ meaning, isNamed }) => isNamed && keyMeanings.includes(meaning));
}

/** The name of the file: with words before it, unless these tell something themselves or lead up to it; `from` is where they do. */
function fileIn(line: string, from: number, clauses: ClauseReader): (Stretch & { from: number }) | undefined {
  const match = [...line.matchAll(named)].find(({ index }) => index >= from);
  if (!match) return undefined;
  const name = match[1] ?? match[2] ?? '';
  const start = match.index + match[0].indexOf(name);
  const end = start + name.length;
  const introduction = introducesFile(line.slice(from, match.index));
  if (introduction > 0) return { start: from + introduction, end, from };
  const led = match.index - wordsBeforeFile(line.slice(from, match.index), name);
  const before = line.slice(from, led);
  if (match[1] !== undefined || before.trim() === '' || /[,;:\uff0c\u3001(]/.test(before))
    return { start, end, from: led };
  const tells = clausesIn(line, from, led).every((part) => clauses.valuesIn(part));
  return tells ? { start, end, from: led } : { start: from, end, from };
}

/** A file in a sentence, and where the words begin that lead up to it: `then keys 46-50 for`. */
function fileInSentence(line: string): (Stretch & { from: number }) | undefined {
  const [match] = line.matchAll(named);
  if (!match) return undefined;
  const name = match[1] ?? match[2] ?? '';
  const start = match.index + match[0].indexOf(name);
  const before = line.slice(0, match.index);
  const led = wordsBeforeFile(before, name) || (/\s\p{L}{1,4}\s+$/u.exec(before)?.[0].length ?? 0);
  return { start, end: start + name.length, from: match.index - led };
}
