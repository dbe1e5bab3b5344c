import type { FileStat } from '../../model/files';
import type { LoopSeam, MeasuredPitch, SampleFacts, SampleSurvey } from '../../model/samples';
import type { MeasureResult } from './measureRequest';
import { measureVersions, pitchKey, seamKeyStart, surveyKey } from './measureRequest';
import { oddJson, parseOddJson } from './oddJson';
import type { BesideNumbers } from './recordColumns';
import {
  columnsVersion,
  factsWidth,
  pitchWidth,
  readFacts,
  readPitch,
  readSurvey,
  surveyWidth,
  writeFacts,
  writePitch,
  writeSurvey,
} from './recordColumns';

/** Where each row keeps what: its state, what is known, the day of its last use, the facts. */
const size = 0;
const modified = 1;
const known = 2;
const usedDay = 3;
const factsStart = 4;
const width = factsStart + factsWidth;
/** And what was measured, which stands apart: where nothing is measured it takes no memory. */
const pitchStart = 0;
const surveyStart = pitchStart + pitchWidth;
const measuresWidth = surveyStart + surveyWidth;

/** What is known, as bits; a measure is known as `null` where nothing could be measured. */
const hasFacts = 1;
const hasPitch = 2;
const pitchIsNull = 4;
const hasSurvey = 8;
const surveyIsNull = 16;

/** Says how the numbers are laid out, so that another layout is not taken for this one. */
const layout = JSON.stringify([
  columnsVersion,
  width,
  measuresWidth,
  new Uint8Array(Uint16Array.of(1).buffer)[0],
]);

/** What stands before the numbers of a table that was written. */
interface Head {
  layout: string;
  versions: Record<string, number>;
  names: string[];
  words: string[];
  /** By row: what numbers cannot hold. */
  odd: [number, Record<string, unknown>][];
  /** Whether numbers of measures stand behind the others. */
  isMeasured: boolean;
}

/**
 * What is remembered of the sample files of one folder, in numbers: a row a file, which takes a few hundred bytes. Records
 * are made when they are asked for.
 */
export class SampleTable {
  #numbers = new Float64Array(16 * width);
  #measures: Float64Array | undefined;
  readonly #names: string[] = [];
  readonly #rows = new Map<string, number>();
  readonly #words: string[] = [];
  readonly #odd = new Map<number, Record<string, unknown>>();
  readonly #besides = new Beside(this.#words, this.#odd);
  /** Whether there is something that is not written yet. */
  isChanged = false;

  get count(): number {
    return this.#names.length;
  }

  /** The row of a file that is remembered in a state; −1 for another. */
  find(name: string, stat: Pick<FileStat, 'size' | 'modified'>): number {
    const row = this.#rows.get(name) ?? -1;
    if (row < 0) return -1;
    const start = row * width;
    const isSame =
      this.#numbers[start + size] === stat.size && this.#numbers[start + modified] === stat.modified;
    return isSame ? row : -1;
  }

  /** The row of a file, whatever its state; −1 where it is not remembered. */
  rowOf(name: string): number {
    return this.#rows.get(name) ?? -1;
  }

  /** The row for a file in a state, made where there is none; what was remembered of another state is forgotten. */
  rowFor(name: string, stat: Pick<FileStat, 'size' | 'modified'>): number {
    const found = this.find(name, stat);
    if (found >= 0) return found;
    let row = this.rowOf(name);
    if (row < 0) {
      row = this.#names.length;
      this.#names.push(name);
      this.#rows.set(name, row);
      if (this.#numbers.length < (row + 1) * width) this.#grow(Math.max(row + 1, Math.ceil(row * 1.5)));
    }
    this.#odd.delete(row);
    const start = row * width;
    this.#numbers.fill(0, start, start + width);
    this.#measures?.fill(0, row * measuresWidth, (row + 1) * measuresWidth);
    this.#numbers[start + size] = stat.size;
    this.#numbers[start + modified] = stat.modified;
    this.isChanged = true;
    return row;
  }

  hasFacts(row: number): boolean {
    return this.#knows(row, hasFacts);
  }

  facts(row: number): SampleFacts | undefined {
    if (!this.#knows(row, hasFacts)) return undefined;
    return readFacts(this.#numbers, row * width + factsStart, this.#beside(row));
  }

  setFacts(row: number, facts: SampleFacts): void {
    writeFacts(facts, this.#numbers, row * width + factsStart, this.#beside(row));
    this.#learn(row, hasFacts, 0);
  }

  /** What was measured, by a name that `measureKey` gives; `undefined` where it was not. */
  measure(row: number, key: string): MeasureResult | undefined {
    const start = row * measuresWidth;
    switch (key) {
      case pitchKey:
        if (!this.#knows(row, hasPitch)) return undefined;
        return this.#knows(row, pitchIsNull) ? null : readPitch(this.#measured(), start + pitchStart);
      case surveyKey:
        if (!this.#knows(row, hasSurvey)) return undefined;
        return this.#knows(row, surveyIsNull)
          ? null
          : readSurvey(this.#measured(), start + surveyStart, this.#beside(row));
      default: {
        const loop = loopOf(key);
        return loop === undefined ? undefined : (this.#beside(row).kept(loop) as LoopSeam | null | undefined);
      }
    }
  }

  /** Takes in what was measured; results of measures that have another version are left out. */
  setMeasures(row: number, measures: Record<string, MeasureResult>): void {
    const start = row * measuresWidth;
    for (const [key, result] of Object.entries(measures)) {
      if (key === pitchKey) {
        if (result) writePitch(result as MeasuredPitch, this.#measured(), start + pitchStart);
        this.#learn(row, hasPitch, result ? 0 : pitchIsNull);
      } else if (key === surveyKey) {
        if (result)
          writeSurvey(result as SampleSurvey, this.#measured(), start + surveyStart, this.#beside(row));
        this.#learn(row, hasSurvey, result ? 0 : surveyIsNull);
      } else {
        const loop = loopOf(key);
        if (loop === undefined) continue;
        this.#beside(row).keep(loop, result);
        this.isChanged = true;
      }
    }
  }

  /** Notes that a file was asked for on a day, counted from 1970; a week without being written is little. */
  use(row: number, day: number): void {
    const at = row * width + usedDay;
    if (day - this.#numbers[at] >= 7) this.isChanged = true;
    this.#numbers[at] = Math.max(this.#numbers[at], day);
  }

  /** The table as bytes, without the rows that were not used since a day. */
  bytes(sinceDay = 0): Uint8Array {
    const kept: number[] = [];
    for (let row = 0; row < this.count; row++)
      if (this.#numbers[row * width + usedDay] >= sinceDay) kept.push(row);
    const head: Head = {
      layout,
      versions: measureVersions,
      names: kept.map((row) => this.#names[row]),
      words: this.#words,
      odd: kept.flatMap((row, at) => {
        const odd = this.#odd.get(row);
        return odd ? [[at, odd] as [number, Record<string, unknown>]] : [];
      }),
      isMeasured: this.#measures !== undefined,
    };
    const text = new TextEncoder().encode(`${oddJson(head)}\n`);
    const bytes = new Uint8Array(text.length + kept.length * bytesOfRow(head));
    bytes.set(text);
    putRows(kept, this.#numbers, width, bytes, text.length);
    if (this.#measures)
      putRows(kept, this.#measures, measuresWidth, bytes, text.length + kept.length * width * 8);
    return bytes;
  }

  /** The table that bytes hold; an empty one where they hold none of this layout. What measures of other versions gave is left out. */
  static from(bytes: Uint8Array): SampleTable {
    const table = new SampleTable();
    const end = bytes.indexOf(10) + 1;
    const head = parseOddJson(new TextDecoder().decode(bytes.subarray(0, end))) as Head | undefined;
    if (!head || head.layout !== layout) return table;
    const rows = head.names.length;
    if (bytes.length - end !== rows * bytesOfRow(head)) return table;
    table.#grow(rows);
    const measuresFrom = end + rows * width * 8;
    new Uint8Array(table.#numbers.buffer).set(bytes.subarray(end, measuresFrom));
    if (head.isMeasured) new Uint8Array(table.#measured().buffer).set(bytes.subarray(measuresFrom));
    for (const name of head.names) {
      table.#rows.set(name, table.#names.length);
      table.#names.push(name);
    }
    table.#words.push(...head.words);
    for (const [row, odd] of head.odd) table.#odd.set(row, odd);
    table.#forgetOtherVersions(head.versions);
    return table;
  }

  #forgetOtherVersions(versions: Record<string, number>): void {
    const isOther = (what: keyof typeof measureVersions) => versions[what] !== measureVersions[what];
    let forgotten = 0;
    if (isOther('facts')) forgotten |= hasFacts;
    if (isOther('pitch')) forgotten |= hasPitch | pitchIsNull;
    if (isOther('survey')) forgotten |= hasSurvey | surveyIsNull;
    if (forgotten !== 0)
      for (let at = known; at < this.count * width; at += width) this.#numbers[at] &= ~forgotten;
    if (!isOther('loopSeam')) return;
    for (const odd of this.#odd.values())
      for (const key of Object.keys(odd)) if (key.startsWith('l ')) delete odd[key];
  }

  /** Makes room for a number of rows. */
  #grow(rows: number): void {
    const resized = (numbers: Float64Array, rowWidth: number) => {
      const grown = new Float64Array(rows * rowWidth);
      grown.set(numbers.subarray(0, grown.length));
      return grown;
    };
    this.#numbers = resized(this.#numbers, width);
    if (this.#measures) this.#measures = resized(this.#measures, measuresWidth);
  }

  /** The numbers of measures, made when they are first needed. */
  #measured(): Float64Array {
    this.#measures ??= new Float64Array((this.#numbers.length / width) * measuresWidth);
    return this.#measures;
  }

  #knows(row: number, bit: number): boolean {
    return (this.#numbers[row * width + known] & bit) !== 0;
  }

  #learn(row: number, bit: number, alsoBit: number): void {
    const at = row * width + known;
    // The bit for `null` is the next one.
    this.#numbers[at] = (this.#numbers[at] & ~(bit << 1)) | bit | alsoBit;
    this.isChanged = true;
  }

  #beside(row: number): Beside {
    this.#besides.row = row;
    return this.#besides;
  }
}

/** What stands beside the numbers of one row of a table, which is set before each record: one for all rows. */
class Beside implements BesideNumbers {
  row = 0;
  readonly #words: string[];
  readonly #odd: Map<number, Record<string, unknown>>;

  constructor(words: string[], odd: Map<number, Record<string, unknown>>) {
    this.#words = words;
    this.#odd = odd;
  }

  wordNumber(word: string): number {
    const at = this.#words.indexOf(word);
    return at >= 0 ? at : this.#words.push(word) - 1;
  }

  word(number: number): string {
    return this.#words[number] ?? '';
  }

  keep(field: string, value: unknown): void {
    let odd = this.#odd.get(this.row);
    if (!odd) {
      odd = {};
      this.#odd.set(this.row, odd);
    }
    odd[field] = value;
  }

  kept(field: string): unknown {
    return this.#odd.get(this.row)?.[field];
  }
}

/** The field that keeps the seam of a loop, by the name that `measureKey` gives; `undefined` for another measure. */
function loopOf(key: string): string | undefined {
  return key.startsWith(`${seamKeyStart} `) ? `l${key.slice(seamKeyStart.length)}` : undefined;
}

/** How many bytes a file takes in a table that was written, its name aside. */
function bytesOfRow({ isMeasured }: Head): number {
  return (width + (isMeasured ? measuresWidth : 0)) * 8;
}

/** Puts some rows of numbers into bytes, from a place on. */
function putRows(
  rows: readonly number[],
  numbers: Float64Array,
  rowWidth: number,
  bytes: Uint8Array,
  from: number,
): void {
  const length = rowWidth * 8;
  const all = new Uint8Array(numbers.buffer);
  for (const [at, row] of rows.entries())
    bytes.set(all.subarray(row * length, (row + 1) * length), from + at * length);
}
