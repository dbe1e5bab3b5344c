import { audioEndingInText } from '../../../model/fileNames';
import type { Stretch } from '../../../model/text/stretch';
import type { ColumnMeaning } from '../../../trade/meaning';
import { keyMeanings } from '../../../trade/meaning';
import type { ToldValue } from '../../../trade/phrases/clause';
import { readClause } from '../../../trade/phrases/clause';
import { writtenWords } from '../../../trade/phrases/toldWords';
import { rangeWords } from '../../../trade/rangeWords';
import { letterNote } from '../../../trade/readings/notePatterns';
import { wordsBeforeFile } from './wordsBeforeFile';

/** A value that a line tells, and where it stands. */
export interface PlacedValue extends ToldValue, Stretch {}

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
/** A name in quotation marks, or one without blanks. */
const named = new RegExp(
  String.raw`["'\u201c\u201e\u00ab\x60]([^"'\u201d\u00bb\x60]{1,120}${audioEndingInText})["'\u201d\u201c\u00bb\x60]|([^\s"',;:()[\]\uff0c\uff1b\uff1a\u3001\u201c\u201e\u00ab\x60]{1,120}${audioEndingInText})`,
  'giu',
);
const lead = new RegExp(
  String.raw`^[ \t\u00a0]*(?:[*\u2022\u2023\u25e6\u2013\u2014-][ \t\u00a0]+)?(?:(${letterNote}-?\d|\d{1,3})[ \u00a0]?([.)\u3001\uff0e:=\uff1a\u2013-])[ \t\u00a0]*(?![\d.]|${letterNote}-?\d))?`,
  'u',
);
/** What parts the clauses of a sentence; a comma between digits is a decimal one. */
const parting =
  /[;\uff0c\uff1b\u3001\u3002()[\]]|,(?!\d)|(?<!\d),|[.!](?=\s|$)|\s[\u2013\u2014-]\s(?!\d)|:\s/gu;
const mostWords = 12;
const pair = new RegExp(
  String.raw`^(?:${writtenWords('first')}\s)?(\d{1,3})(?:\s?(?:[-\u2010-\u2015~]|\.{2,3}|\u2026)\s?|\s(?:${writtenWords('last')}|${rangeWords})\s)(\d{1,3})$`,
  'iu',
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

/** What a line tells; `legend` reads clauses that only the text explains. */
export function toldLineIn(
  text: string,
  { start, end }: Stretch,
  legend: (clause: string) => ToldValue | undefined,
): ToldLine {
  const line = text.slice(start, end);
  const found = lead.exec(line);
  const from = found?.[0].length ?? 0;
  const before = found?.[1];
  const first =
    before === undefined
      ? undefined
      : {
          text: before,
          sign: found?.[2] ?? '',
          start: start + line.indexOf(before),
          end: start + line.indexOf(before) + before.length,
        };
  const clauses = new ClauseReader(line, legend);
  const file = fileIn(line, from, clauses);
  const parts = file
    ? [...clausesIn(line, from, file.from), ...clausesIn(line, file.end, line.length)]
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
  return {
    lead: first,
    file: file && { start: start + file.start, end: start + file.end },
    values: around ? [...values, around] : values,
    rest: rest.filter((one) => one.start !== around?.start),
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
    const [, low = '', high = ''] = pair.exec(text.slice(one.start, one.end)) ?? [];
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
  const led = match.index - wordsBeforeFile(line.slice(from, match.index), name);
  const before = line.slice(from, led);
  if (match[1] !== undefined || before.trim() === '' || /[,;:\uff0c\u3001(]/.test(before))
    return { start, end, from: led };
  const tells = clausesIn(line, from, led).every((part) => clauses.valuesIn(part));
  return tells ? { start, end, from: led } : { start: from, end, from };
}

function clausesIn(line: string, from: number, to: number): Stretch[] {
  const found: Stretch[] = [];
  let at = from;
  const add = (end: number) => {
    const part = line.slice(at, end);
    const trimmed = part.trim();
    if (/[\p{L}\p{N}%]/u.test(trimmed)) {
      const start = at + part.indexOf(trimmed);
      found.push({ start, end: start + trimmed.length });
    }
  };
  parting.lastIndex = 0;
  for (const match of line.matchAll(parting)) {
    if (match.index < at || match.index >= to) continue;
    add(match.index);
    at = match.index + match[0].length;
  }
  add(to);
  return found;
}

/** What is told by its unit, wherever it stands. */
const amounts: ReadonlySet<ColumnMeaning> = new Set(['volume', 'tune', 'deviation']);
/** Words that join two clauses, in the languages of the trade. */
const joining = /\s(?:and|und|et|y|e|en|och|og|ja|i|a|és|ve|и|και|plus)\s/giu;

/** A sentence joins few clauses; a line with more is none. */
const mostJoints = 3;

/** Reads the clauses of one line. Which values a stretch tells is worked out once, since it ends many others. */
class ClauseReader {
  readonly #line: string;
  readonly #legend: (clause: string) => ToldValue | undefined;
  readonly #told = new Map<string, PlacedValue[] | undefined>();

  constructor(line: string, legend: (clause: string) => ToldValue | undefined) {
    this.#line = line;
    this.#legend = legend;
  }

  /** The values of a clause: one, or those of the parts that it is made of without a sign between them. */
  valuesIn(part: Stretch): PlacedValue[] | undefined {
    const place = `${part.start} ${part.end}`;
    if (!this.#told.has(place)) this.#told.set(place, this.#valuesOfJoined(part) ?? this.#valuesOfOne(part));
    return this.#told.get(place);
  }

  /** The values of two clauses that a word joins, where each says what its own are: `5 cents flat and 2 dB louder`. */
  #valuesOfJoined({ start, end }: Stretch): PlacedValue[] | undefined {
    const joints = [...this.#line.slice(start, end).matchAll(joining)];
    if (joints.length > mostJoints) return undefined;
    for (const { 0: word, index } of joints) {
      const left = { start, end: start + index };
      const first = readClause(this.#line.slice(left.start, left.end));
      const second = first?.isNamed ? this.valuesIn({ start: left.end + word.length, end }) : undefined;
      if (!first || !second?.every(({ isNamed, meaning }) => isNamed && meaning !== first.meaning)) continue;
      // In other languages the same word stands within a range of keys.
      const values = [{ ...first, ...left }, ...second];
      if (values.some(({ meaning }) => amounts.has(meaning))) return values;
    }
    return undefined;
  }

  #valuesOfOne(part: Stretch): PlacedValue[] | undefined {
    const clause = this.#line.slice(part.start, part.end);
    const one = this.#legend(clause) ?? readClause(clause.replace(/^[\s:\u2013\u2014-]+(?!\d)/u, ''));
    if (one) return [{ ...one, ...part }];
    const blanks = [...clause.matchAll(/\s+/gu)];
    if (blanks.length < 2 || blanks.length > mostWords) return undefined;
    // The longest first: `fra tangent 48 til 52` is one range, not a key and an end.
    for (const { index } of blanks.reverse()) {
      const left = readClause(clause.slice(0, index));
      if (!left?.isNamed && left?.meaning !== 'key_range') continue;
      const right = this.valuesIn({ start: part.start + index + 1, end: part.end });
      if (!right?.every(({ isNamed }) => isNamed)) continue;
      // Beside a root that a word names, two notes are its range.
      if (!left.isNamed && !right.some(({ meaning }) => meaning === 'pitch_keycenter')) continue;
      return [{ ...left, isNamed: true, start: part.start, end: part.start + index }, ...right];
    }
    return undefined;
  }
}
