import { isAudioFileName } from '../../../model/fileNames';
import { textStart } from '../../../model/text/textLayout';
import { readHeading } from '../../../trade/headings';
import { bareWord } from '../../../trade/languages/spelling';
import type { ColumnMeaning } from '../../../trade/meaning';
import { keyMeanings } from '../../../trade/meaning';
import { TableCells } from '../cells';
import type { Labelled } from './recordLines';
import { fieldOf, fieldsIn, labelledParts } from './recordLines';

/** So many lines tell whether a text is made of records. */
const mostLooks = 200;
/** Of these the first have to be like records already. */
const fewLooks = 12;
const mostLabels = 200;
const fewestLabels = 12;
/** Records take no more cells than these; of a very long text, fewer labels are looked at. */
const mostCells = 40_000_000;
const shortestRecord = 16;
const mostSpellings = 2000;
const numbered = /^\W*(?:\p{L}+\W*)?\d+\W*$/u;

/** A line of records: its labels and values, none for other text. */
interface RecordLine {
  start: number;
  end: number;
  fields: readonly Labelled[];
}

/**
 * The cells of a text in which each zone is a record: a block of lines such as `Root key: C3`, or a line of parts such
 * as `root=C3`. The labels make a row of headings. `undefined` for any other text.
 */
export function recordCells(text: string): TableCells | undefined {
  const looksSo = (read: typeof oneField, lines: number) =>
    areRecords(
      text,
      [...linesIn(text, lines)].map((line) => read(text, line)),
    );
  const read = [oneField, someFields, someParts].find(
    (one) => looksSo(one, fewLooks) && looksSo(one, mostLooks),
  );
  if (!read) return undefined;
  const records = new Records(text, read !== oneField);
  for (const line of linesIn(text, Number.POSITIVE_INFINITY)) records.add(read(text, line));
  return records.cells();
}

function* linesIn(text: string, most: number): Generator<{ start: number; end: number }> {
  let start = textStart(text);
  for (let lines = 0; start < text.length && lines < most; lines++) {
    let end = start;
    while (end < text.length && text.charCodeAt(end) !== 10 && text.charCodeAt(end) !== 13) end++;
    yield { start, end };
    start = end + (text.charCodeAt(end) === 13 && text.charCodeAt(end + 1) === 10 ? 2 : 1);
  }
}

function oneField(text: string, { start, end }: { start: number; end: number }): RecordLine {
  const found = fieldOf(text, start, end);
  return { start, end, fields: found ? [found] : [] };
}

function someFields(text: string, { start, end }: { start: number; end: number }): RecordLine {
  const fields = fieldsIn(text, start, end);
  return { start, end, fields: fields.length > 1 ? fields : [] };
}

function someParts(text: string, { start, end }: { start: number; end: number }): RecordLine {
  return { start, end, fields: labelledParts(text, start, end) };
}

/** Whether most lines have labels and values, most labels are known headings, and samples are named beside keys or as files. */
function areRecords(text: string, lines: readonly RecordLine[]): boolean {
  const filled = lines.filter(({ start, end }) => end > start);
  const labelled = filled.filter(({ fields }) => fields.length > 0);
  if (labelled.length === 0 || labelled.length * 5 < filled.length * 3) return false;
  const meanings = new Map<string, ColumnMeaning | undefined>();
  const times = new Map<string, number>();
  let tabs = false;
  let files = false;
  for (const { label, sign, valueStart, valueEnd } of labelled.flatMap(({ fields }) => fields)) {
    const word = bareWord(label);
    if (!meanings.has(word)) meanings.set(word, readHeading(label)?.meaning);
    times.set(word, (times.get(word) ?? 0) + 1);
    tabs ||= sign === '\t';
    files ||= isAudioFileName(text.slice(valueStart, valueEnd));
  }
  const known = new Set([...meanings.values()].filter((meaning) => meaning !== undefined));
  const knownLabels = [...meanings.values()].filter((meaning) => meaning !== undefined).length;
  const unlabelled = files && meanings.has('');
  if (known.size < 2 || knownLabels * 2 < meanings.size) return false;
  if (!known.has('sample') && !unlabelled) return false;
  const records = Math.max(...times.values());
  // Two columns parted by a tab are a table of their own unless their labels recur.
  if (records < 2) return !tabs && files && known.size > 2;
  return files || keyMeanings.some((meaning) => known.has(meaning));
}

/** Collects records: what each gives for each label, in flat lists. */
class Records {
  readonly #labels = new Map<string, number>();
  readonly #labelSpans: { start: number; end: number }[] = [];
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
  #isOpen = false;
  #afterBlank = true;
  /** The label that the open record starts with: where it stands again, the next one does. */
  #firstLabel = -1;

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
    if (numbered.test(this.text.slice(start, Math.min(end, start + 100)))) return;
    this.#open(start, end);
    this.#isOpen = false;
    this.#addValue(0, start, end);
  }

  #addField(field: Labelled, start: number, end: number): void {
    const label = this.#labelOf(field);
    if (label < 0) return;
    const isGiven = this.#givenBy[label] === this.#starts.length;
    const isFirst = label === 0 || (isGiven && label === this.#firstLabel);
    const starts = this.perLine ? this.#afterBlank : isFirst || (this.#afterBlank && isGiven);
    if (!this.#isOpen || starts) {
      this.#open(start, end);
      this.#firstLabel = label;
    } else if (isGiven) return;
    this.#ends[this.#ends.length - 1] = end;
    this.#givenBy[label] = this.#starts.length;
    this.#addValue(label, field.valueStart, field.valueEnd);
  }

  /** The number of a label; −1 for one that is too many. */
  #labelOf({ label, labelStart }: Labelled): number {
    const known = this.#labels.get(label);
    if (known !== undefined) return known;
    const word = bareWord(label);
    let number = this.#labels.get(word);
    if (number === undefined) {
      if (this.#labelSpans.length >= this.#mostLabels) return -1;
      number = this.#labelSpans.length;
      this.#labels.set(word, number);
      this.#labelSpans.push({ start: labelStart, end: labelStart + label.length });
      this.#givenBy.push(0);
    }
    // The same label in another spelling is found without being put into its usual form again.
    if (this.#labels.size < mostSpellings) this.#labels.set(label, number);
    return number;
  }

  #open(start: number, end: number): void {
    this.#starts.push(start);
    this.#ends.push(end);
    this.#firsts.push(this.#valueLabels.length);
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
    const values = new Int32Array(this.#labelSpans.length);
    for (const [record, start] of this.#starts.entries()) {
      // A title before all records stands above the headings, as in other tables.
      if (spans.length === record && this.#ends[record] >= this.#labelSpans[0].start) {
        for (const label of this.#labelSpans) cells.add(label.start, label.end);
        cells.endRow();
        spans.push(this.#labelSpans[0]);
      }
      values.fill(-1);
      const last = this.#firsts[record + 1] ?? this.#valueLabels.length;
      for (let value = this.#firsts[record]; value < last; value++) values[this.#valueLabels[value]] = value;
      for (const value of values) {
        if (value < 0) cells.put(start, start);
        else cells.add(this.#valueStarts[value], this.#valueEnds[value]);
      }
      cells.endRow();
      spans.push({ start, end: this.#ends[record] });
    }
    cells.rowSpans = spans;
    return cells;
  }
}
