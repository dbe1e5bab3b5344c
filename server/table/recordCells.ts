import { isAudioFileName } from './audioFileName';
import { TableCells, textStart } from './cells';
import { readHeading } from './headings';
import { bareWord } from './languages/spelling';
import type { ColumnMeaning } from './meaning';
import { keyMeanings } from './meaning';
import type { Labelled } from './recordLines';
import { fieldOf, fieldsIn } from './recordLines';

/** So many lines tell whether a text is made of records. */
const mostLooks = 200;
/** Of these the first have to be like records already. */
const fewLooks = 12;
const mostLabels = 200;
const numbered = /^\W*(?:\p{L}+\W*)?\d+\W*$/u;

/** A line of records: its labels and values, none for other text. */
interface RecordLine {
  start: number;
  end: number;
  fields: readonly Labelled[];
}

/** A zone as labels and values, or text between zones. */
interface ZoneRecord {
  start: number;
  end: number;
  /** Offsets of the value of each label, by the label's number. */
  values: Map<number, { start: number; end: number }>;
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
  const read = [oneField, someFields].find((one) => looksSo(one, fewLooks) && looksSo(one, mostLooks));
  if (!read) return undefined;
  const lines = [...linesIn(text, Number.POSITIVE_INFINITY)].map((line) => read(text, line));
  return new Records(text, read === someFields).cells(lines);
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
  if (known.size < 2 || knownLabels * 2 < meanings.size || !known.has('sample')) return false;
  const records = Math.max(...times.values());
  // Two columns parted by a tab are a table of their own unless their labels recur.
  if (records < 2) return !tabs && files && known.size > 2;
  return files || keyMeanings.some((meaning) => known.has(meaning));
}

class Records {
  readonly #labels = new Map<string, number>();
  readonly #labelSpans: { start: number; end: number }[] = [];
  readonly #records: ZoneRecord[] = [];
  #open: ZoneRecord | undefined;
  #firstLabel = '';

  constructor(
    readonly text: string,
    /** Whether each line is a record. */
    readonly perLine: boolean,
  ) {}

  cells(lines: readonly RecordLine[]): TableCells {
    let afterBlank = true;
    for (const line of lines) {
      const blank = this.text.slice(line.start, Math.min(line.end, line.start + 200)).trim() === '';
      if (this.perLine || (blank && line.fields.length === 0)) afterBlank = true;
      if (blank) continue;
      if (line.fields.length === 0) this.#addText(line);
      for (const field of line.fields) {
        this.#addField(field, afterBlank, line);
        afterBlank = false;
      }
    }
    return this.#asCells();
  }

  /** Text between records, such as the name of a group; one that only numbers a zone says nothing. */
  #addText({ start, end }: RecordLine): void {
    this.#open = undefined;
    if (numbered.test(this.text.slice(start, Math.min(end, start + 100)))) return;
    this.#records.push({ start, end, values: new Map([[0, { start, end }]]) });
  }

  #addField(field: Labelled, afterBlank: boolean, line: RecordLine): void {
    const word = bareWord(field.label);
    if (this.#firstLabel === '') this.#firstLabel = word;
    let label = this.#labels.get(word);
    if (label === undefined) {
      if (this.#labels.size >= mostLabels) return;
      label = this.#labels.size;
      this.#labels.set(word, label);
      this.#labelSpans.push({ start: field.labelStart, end: field.labelStart + field.label.length });
    }
    const starts = word === this.#firstLabel || (afterBlank && this.#open?.values.has(label));
    if (!this.#open || (this.perLine ? afterBlank : starts)) {
      this.#open = { start: line.start, end: line.end, values: new Map() };
      this.#records.push(this.#open);
    }
    this.#open.end = line.end;
    if (!this.#open.values.has(label))
      this.#open.values.set(label, { start: field.valueStart, end: field.valueEnd });
  }

  #asCells(): TableCells {
    const cells = new TableCells(this.text);
    const spans: { start: number; end: number }[] = [];
    let headed = false;
    for (const { start, end, values } of this.#records) {
      // A title before all records stands above the headings, as in other tables.
      if (!headed && end >= this.#labelSpans[0].start) {
        for (const label of this.#labelSpans) cells.add(label.start, label.end);
        cells.endRow();
        spans.push(this.#labelSpans[0]);
        headed = true;
      }
      for (let label = 0; label < this.#labelSpans.length; label++) {
        const value = values.get(label);
        if (value) cells.add(value.start, value.end);
        else cells.put(start, start);
      }
      cells.endRow();
      spans.push({ start, end });
    }
    cells.rowSpans = spans;
    return cells;
  }
}
