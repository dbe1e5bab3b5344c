import { readHeading } from '../../../trade/headings/headings';
import { bareWord } from '../../../trade/languages/spelling';
import { keyMeanings } from '../../../trade/meaning';
import { triggerOf } from '../../../trade/readings/triggers';
import { meansShared } from '../../../trade/sharedWords';
import { TableCells } from '../cells';
import { rolesInBlock } from './instrumentBlocks';
import type { Labelled } from './recordLines';

const mostLabels = 200;
const fewestLabels = 12;
/** Records take no more cells than these; of a very long text, fewer labels are looked at. */
const mostCells = 40_000_000;
const shortestRecord = 16;
const mostSpellings = 2000;
/** A text that only numbers a zone. */
const numbered = /^\W*(?:\p{L}+\W*)?\d+\W*$/u;

const section = /^\s*\[{1,2}[^\][]+\]{1,2}\s*$/u;

/** The name of an array above one of its parts (TOML 1.0, array of tables). */
const arrayTitle = /^\s*\[\[[^\][]+\]\]\s*$/u;
const brackets = /[[\]\s]/g;
const arrayTitles = /^[ \t]*\[\[([^\][\r\n]+)\]\][ \t]*$/gmu;

/** A line of records: its labels and values, none for other text. */
export interface RecordLine {
  start: number;
  end: number;
  fields: readonly Labelled[];
}

/** The heading of folders that blocks name. */
const folderHeading = 'folder';

/** Two values in square brackets, as TOML writes a range. */
const bracketed = /^\[\s*["']?([^\s,"'[\]]+)["']?\s*,\s*["']?([^\s,"'[\]]+)["']?\s*\]$/u;

/** Adds a value without its quotation marks; two in square brackets read as a range. */
function addValue(cells: TableCells, start: number, end: number): void {
  const { codes, text } = cells;
  const first = codes[start];
  const isQuoted = end - start > 2 && (first === 34 || first === 39) && codes[end - 1] === first;
  const cell = isQuoted ? cells.add(start + 1, end - 1) : cells.add(start, end);
  const pair = first === 91 ? bracketed.exec(text.slice(start, end)) : null;
  if (pair) cells.rewritten.set(cell, `${pair[1]}-${pair[2]}`);
}

/** Where a label stands; `owed` is one that does not stand in the text. */
interface LabelSpan {
  start: number;
  end: number;
  owed: string | undefined;
}

/** Collects records: what each gives for each label, in flat lists. */
export class Records {
  readonly #labels = new Map<string, number>();
  readonly #labelSpans: LabelSpan[] = [];
  readonly #mostLabels: number;
  /** Of each record, where it stands and the first of its values. */
  readonly #starts: number[] = [];
  readonly #ends: number[] = [];
  readonly #firsts: number[] = [];
  /** Of each value, its label and where it stands. */
  readonly #valueLabels: number[] = [];
  readonly #valueStarts: number[] = [];
  readonly #valueEnds: number[] = [];
  /** By label, the last record that gave a value for it, plus one. */
  readonly #givenBy: number[] = [];
  /** The line of text that each record stands below, by its offset; −1 for none, and for one that only numbers it. */
  readonly #titles: number[] = [];
  readonly #titleEnds: number[] = [];
  readonly #areTexts: boolean[] = [];
  #titleStart = -1;
  #titleEnd = -1;
  /** The names of arrays whose parts stand below their names, as TOML has them. */
  #arrays: ReadonlySet<string> | undefined;
  #isOpen = false;
  #afterBlank = true;
  /** The label that the open record starts with: where it stands again, the next one does. */
  #firstLabel = -1;
  /** The label that always starts a record; −1 for the first one of the next. */
  #startLabel = 0;

  constructor(
    readonly text: string,
    /** Whether each line is a record. */
    readonly perLine: boolean,
  ) {
    const mostRecords = Math.max(1, text.length / shortestRecord);
    this.#mostLabels = Math.max(fewestLabels, Math.min(mostLabels, Math.floor(mostCells / mostRecords)));
  }

  /** Takes a line; `fields` are its labels and values. */
  add({ start, end, fields }: RecordLine): void {
    const blank = fields.length === 0 && this.text.slice(start, Math.min(end, start + 200)).trim() === '';
    if (this.perLine || blank) this.#afterBlank = true;
    if (blank) return;
    if (fields.length === 0) this.#addText(start, end);
    for (const field of fields) {
      this.#addField(field, start, end);
      this.#afterBlank = false;
    }
  }

  /** Text between records, such as the name of a group; one that only numbers a zone says nothing. */
  #addText(start: number, end: number): void {
    this.#isOpen = false;
    const written = this.text.slice(start, Math.min(end, start + 100));
    const isNumber = numbered.test(written) || this.#isOfArray(written);
    // Each section starts with what stands first in it.
    if (section.test(written)) this.#startLabel = -1;
    this.#titleStart = isNumber ? -1 : start;
    this.#titleEnd = end;
    if (isNumber) return;
    this.#open(start, end);
    this.#areTexts[this.#areTexts.length - 1] = true;
    this.#isOpen = false;
    this.#addValue(0, start, end);
  }

  /** Whether a title only begins one more zone of the one array that a text in TOML consists of, as `[[zone]]` does. */
  #isOfArray(written: string): boolean {
    if (!arrayTitle.test(written)) return false;
    this.#arrays ??= new Set(Array.from(this.text.matchAll(arrayTitles), ([, name]) => name));
    return this.#arrays.size === 1 && triggerOf(written.replace(brackets, '')) === undefined;
  }

  #addField(field: Labelled, start: number, end: number): void {
    const label = this.#labelOf(field);
    if (label < 0) return;
    const isGiven = this.#givenBy[label] === this.#starts.length;
    const isFirst = label === this.#startLabel || (isGiven && label === this.#firstLabel);
    const isApart = this.#afterBlank && (isGiven || this.#isPreface());
    const starts = this.perLine ? this.#afterBlank : isFirst || isApart;
    if (!this.#isOpen || starts) {
      if (this.#startLabel < 0 || this.#isPreface()) this.#startLabel = label;
      this.#open(start, end);
      this.#firstLabel = label;
      // What goes for all zones starts with any of their labels.
      if (this.#titleStart >= 0 && meansShared(this.text.slice(this.#titleStart, this.#titleEnd)))
        this.#startLabel = -1;
    } else if (isGiven) return;
    this.#ends[this.#ends.length - 1] = end;
    this.#givenBy[label] = this.#starts.length;
    this.#addValue(label, field.valueStart, field.valueEnd);
  }

  /** Whether the open record is the first one and says nothing that only a zone has. */
  #isPreface(): boolean {
    if (this.perLine || this.#starts.length !== 1 || this.#areTexts[0]) return false;
    return this.#labelSpans.every(({ start, end }) => {
      const meaning = readHeading(this.text.slice(start, end))?.meaning;
      return (
        meaning !== undefined && meaning !== 'sample' && meaning !== 'group' && !keyMeanings.includes(meaning)
      );
    });
  }

  /** The number of a label; −1 for one that is too many. */
  #labelOf({ label, labelStart, isOwed }: Labelled): number {
    const known = this.#labels.get(label);
    if (known !== undefined) return known;
    const word = bareWord(label);
    let number = this.#labels.get(word);
    if (number === undefined) {
      if (this.#labelSpans.length >= this.#mostLabels) return -1;
      number = this.#labelSpans.length;
      this.#labels.set(word, number);
      const end = isOwed ? labelStart + 1 : labelStart + label.length;
      this.#labelSpans.push({ start: labelStart, end, owed: isOwed ? label : undefined });
      this.#givenBy.push(0);
    }
    // The same label in another spelling is found without being put into its usual form again.
    if (this.#labels.size < mostSpellings) this.#labels.set(label, number);
    return number;
  }

  /** The label of a folder of samples, whatever it is called. */
  #folderLabel(value: number): number {
    const { start, end } = this.#labelSpans[this.#valueLabels[value]];
    const known = this.#labelSpans.findIndex(({ owed }) => owed === folderHeading);
    return known < 0 ? this.#labelSpans.push({ start, end, owed: folderHeading }) - 1 : known;
  }

  #open(start: number, end: number): void {
    this.#starts.push(start);
    this.#ends.push(end);
    this.#firsts.push(this.#valueLabels.length);
    this.#titles.push(this.#titleStart);
    this.#titleEnds.push(this.#titleEnd);
    this.#areTexts.push(false);
    this.#isOpen = true;
  }

  #addValue(label: number, start: number, end: number): void {
    this.#valueLabels.push(label);
    this.#valueStarts.push(start);
    this.#valueEnds.push(end);
  }

  cells(): TableCells {
    const cells = new TableCells(this.text);
    const spans: { start: number; end: number }[] = [];
    const shared = this.perLine ? undefined : this.#sharedValues();
    const values = new Int32Array(this.#labelSpans.length);
    for (const [record, start] of this.#starts.entries()) {
      if (shared?.isTaken[record]) {
        spans.push({ start, end: start });
        cells.endRow();
        continue;
      }
      // A title before all records stands above the headings, as in other tables.
      if (spans.length === record && this.#ends[record] >= this.#labelSpans[0].start) {
        for (const label of this.#labelSpans) {
          const cell = cells.add(label.start, label.end);
          if (label.owed !== undefined) cells.rewritten.set(cell, label.owed);
        }
        cells.endRow();
        spans.push(this.#labelSpans[0]);
      }
      values.fill(-1);
      const last = this.#firsts[record + 1] ?? this.#valueLabels.length;
      const common = this.#areTexts[record] ? [] : (shared?.of(record) ?? []);
      for (const value of common) values[this.#valueLabels[value]] = value;
      for (let value = this.#firsts[record]; value < last; value++) values[this.#valueLabels[value]] = value;
      for (const value of values) {
        if (value < 0) cells.put(start, start);
        else addValue(cells, this.#valueStarts[value], this.#valueEnds[value]);
      }
      cells.endRow();
      spans.push({ start, end: this.#ends[record] });
    }
    cells.rowSpans = spans;
    cells.assumptions = shared?.assumptions ?? [];
    return cells;
  }

  /** Blocks without a sample that say what goes for the zones below, or for all; `undefined` where there are none. */
  #sharedValues(): SharedValues | undefined {
    const meanings = this.#labelSpans.map(
      ({ start, end }) => readHeading(this.text.slice(start, end))?.meaning,
    );
    const valuesIn = (record: number) => {
      const last = this.#firsts[record + 1] ?? this.#valueLabels.length;
      return Array.from({ length: last - this.#firsts[record] }, (_, at) => this.#firsts[record] + at);
    };
    const meaningOf = (value: number) => meanings[this.#valueLabels[value]];
    const textOf = (value: number) => this.text.slice(this.#valueStarts[value], this.#valueEnds[value]);
    const headingOf = (value: number) => {
      const { start, end } = this.#labelSpans[this.#valueLabels[value]];
      return this.text.slice(start, end);
    };
    const rolesOf = (values: readonly number[]) =>
      rolesInBlock(
        values.map((value) => ({
          heading: headingOf(value),
          meaning: meaningOf(value),
          text: textOf(value),
        })),
      );
    const hasFiles = rolesOf(this.#valueLabels.map((_, value) => value)) === undefined;
    const isOfZone = (value: number) => {
      const meaning = meaningOf(value);
      return meaning === 'sample' || (meaning !== undefined && keyMeanings.includes(meaning));
    };
    const shared = new SharedValues();
    let known = false;
    for (const [record, start] of this.#starts.entries()) {
      const values = this.#areTexts[record] ? [] : valuesIn(record);
      const title =
        this.#titles[record] < 0 ? '' : this.text.slice(this.#titles[record], this.#titleEnds[record]);
      const roles = hasFiles && title !== '' && !this.#areTexts[record] ? rolesOf(values) : undefined;
      const folders = values.filter((_, at) => roles?.[at] === 'folder');
      const isForAll = meansShared(title);
      const telling = values.filter((value, at) => {
        if (roles && roles[at] !== 'value') return roles[at] === 'folder';
        const meaning = meaningOf(value);
        // A title that speaks of all zones says so of what has any other name, too.
        return meaning === undefined ? isForAll : meaning !== 'comment' && meaning !== 'group';
      });
      const isOfZones = values.some((value, at) => (roles?.[at] ?? 'value') === 'value' && isOfZone(value));
      const isShared = telling.length > 0 && !isOfZones && (title !== '' || !known);
      if (!this.#areTexts[record]) known = true;
      if (!isShared) {
        shared.pass(record);
        continue;
      }
      const from = title === '' ? start : this.#titles[record];
      shared.take(record, telling, title, { start: from, end: this.#ends[record] });
      for (const value of folders) this.#valueLabels[value] = this.#folderLabel(value);
      // The title of such a block is no row of its own.
      if (
        title !== '' &&
        record > 0 &&
        this.#areTexts[record - 1] &&
        (meansShared(title) || folders.length > 0)
      )
        shared.isTaken[record - 1] = true;
    }
    return shared.assumptions.length > 0 ? shared : undefined;
  }
}

/** Values that go for several records: all, or those below. */
class SharedValues {
  readonly isTaken: boolean[] = [];
  readonly assumptions: { text: string; start: number; end: number }[] = [];
  readonly #all: number[] = [];
  /** For each record the values of the block that it stands below. */
  readonly #below: (readonly number[])[] = [];
  #last: readonly number[] = [];

  /** The values of blocks that go for a record, those that are nearer later. */
  of(record: number): readonly number[] {
    return [...this.#all, ...(this.#below[record] ?? [])];
  }

  pass(record: number): void {
    this.#below[record] = this.#last;
    this.isTaken[record] = false;
  }

  take(record: number, values: readonly number[], title: string, span: { start: number; end: number }): void {
    this.#below[record] = [];
    this.isTaken[record] = true;
    const isForAll = meansShared(title) || title === '';
    if (isForAll) this.#all.push(...values);
    else this.#last = values;
    const named =
      title === '' ? 'The values above the first zone go' : `The values of "${title.trim().slice(0, 60)}" go`;
    const whose = isForAll ? 'all zones' : 'the zones below';
    this.assumptions.push({ text: `${named} for ${whose} that give none of their own.`, ...span });
  }
}
