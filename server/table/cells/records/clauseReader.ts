import type { Stretch } from '../../../model/text/stretch';
import type { ColumnMeaning } from '../../../trade/meaning';
import type { ToldValue } from '../../../trade/phrases/clause';
import { readClause } from '../../../trade/phrases/clause';
import { writtenWords } from '../../../trade/phrases/toldWords';
import { rangeWords } from '../../../trade/rangeWords';
import { letterNote } from '../../../trade/readings/notePatterns';

/** A value that a line tells, and where it stands. */
export interface PlacedValue extends ToldValue, Stretch {}

const note = String.raw`${letterNote}[-\u2212]?\d`;
/** What parts the clauses of a sentence; a comma between digits is a decimal one, and a dash between two keys is that of a range. */
const parting = new RegExp(
  String.raw`[;\uff0c\uff1b\u3001\u3002()[\]]|,(?!\d)|(?<!\d),|[.!](?=\s|$)|(?:(?<!(?<![\p{L}\d])${note})\s[\u2013\u2014-]\s|\s[\u2013\u2014-]\s(?!${note}(?![\p{L}\d])))(?!\d)|:\s|(?<=\S)[ \u00a0]{2,}(?=\p{L}{2,}\s)`,
  'gu',
);
const mostWords = 16;
/** Two bare numbers, which a root has to say are keys. */
export const barePair = new RegExp(
  String.raw`^(?:${writtenWords('first')}\s)?(\d{1,3})(?:\s?(?:[-\u2010-\u2015~]|\.{2,3}|\u2026)\s?|\s(?:${writtenWords('last')}|${rangeWords})\s)(\d{1,3})$`,
  'iu',
);
const pairBehind = new RegExp(
  String.raw`^((?:${writtenWords('first')}\s)?)(\d{1,3})(?:\s?(?:[-\u2010-\u2015~]|\.{2,3}|\u2026)\s?|\s(?:${writtenWords('last')}|${rangeWords})\s)(\d{1,3})(,?\s+)`,
  'iu',
);

/** The stretches of a line between two places that signs part. */
export function clausesIn(line: string, from: number, to: number): Stretch[] {
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
export class ClauseReader {
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

  /** Two bare numbers, and behind them the root that lies between: `from 55 to 59 with root 57`. */
  #rangeBeforeRoot({ start, end }: Stretch): PlacedValue[] | undefined {
    const [keys = '', , low = '', high = '', join = ''] = pairBehind.exec(this.#line.slice(start, end)) ?? [];
    if (keys === '') return undefined;
    const rest = this.valuesIn({ start: start + keys.length, end });
    const root = Number(rest?.find(({ meaning }) => meaning === 'pitch_keycenter')?.text);
    if (!rest || !(Number(low) <= root && root <= Number(high))) return undefined;
    const range = { start, end: start + keys.length - join.length };
    return [{ ...range, meaning: 'key_range', text: `${low} \u2013 ${high}`, isNamed: true }, ...rest];
  }

  #valuesOfOne(part: Stretch): PlacedValue[] | undefined {
    const clause = this.#line.slice(part.start, part.end);
    // Without a word for keys, the root alone says that two numbers are some.
    if (barePair.test(clause)) return undefined;
    const around = this.#rangeBeforeRoot(part);
    if (around) return around;
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
