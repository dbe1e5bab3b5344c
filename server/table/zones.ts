import type { TableCells } from './cells';
import { isTotal } from './headings';
import { readKeyRange } from './keyValues';
import type { ColumnReading } from './meaning';
import { shortened } from './meaning';
import { isAudioFileName } from './numberValues';
import type { MiddleC } from './octave';
import { octaveShifts } from './octave';
import type { TableNotes } from './tableNotes';
import type { TableRows } from './tableRows';
import type { Zone } from './zone';
import { ZoneReader } from './zoneReader';

const breaks = /[\u0000-\u001f\u007f\u0085\u2028\u2029]+/g;
const keyMeanings: readonly string[] = ['pitch_keycenter', 'key', 'lokey', 'hikey', 'key_range'];

/** Reads the rows of a table that are zones, and notes those that are not. */
export function readZones(
  cells: TableCells,
  rows: TableRows,
  columns: readonly ColumnReading[],
  middleC: MiddleC | undefined,
  resolveSample: ((sample: string) => string | undefined) | undefined,
  notes: TableNotes,
): Zone[] {
  const reader = new ZoneReader(cells, columns, rows.data, notes, octaveShifts[middleC ?? 'C4']);
  const names = new NameReader(cells, rows, columns, notes);
  const zones: Zone[] = [];
  for (const row of rows.before) names.ignore(row, 'stands before the headings');
  for (const row of rows.repeated) names.ignore(row, 'says the headings again');
  for (const row of rows.data) {
    const sample = names.sampleOf(row);
    if (!sample) continue;
    const { group, cell: groupCell } = names.groupOf(row);
    const values = reader.read(row);
    values.unshift({
      name: 'sample',
      cell: sample.cell,
      text: resolveSample?.(sample.text) ?? names.unresolved(sample),
    });
    // The values of a region stand in the order of its cells, so that offsets rise.
    values.sort((a, b) => a.cell - b.cell);
    zones.push({ row, group, groupCell, values });
  }
  return zones;
}

/** Reads the cells that are names: the sample and the group. */
class NameReader {
  readonly #cells: TableCells;
  readonly #notes: TableNotes;
  readonly #sample: ColumnReading;
  readonly #group: ColumnReading | undefined;
  readonly #keys: readonly ColumnReading[];
  /** Whether most samples of rows with keys have the ending of an audio file. */
  readonly #endings: boolean;
  readonly #fillGroups: boolean;
  #lastGroup: { group: string; cell: number } = { group: '', cell: -1 };
  readonly #width: number;
  #saidEnding = false;

  constructor(cells: TableCells, rows: TableRows, columns: readonly ColumnReading[], notes: TableNotes) {
    this.#cells = cells;
    this.#width = rows.width;
    this.#notes = notes;
    this.#sample = columns.find(({ meaning }) => meaning === 'sample') as ColumnReading;
    this.#group = columns.find(({ meaning }) => meaning === 'group');
    this.#keys = columns.filter(({ meaning }) => keyMeanings.includes(meaning));
    let files = 0;
    let named = 0;
    for (const row of rows.data) {
      const text = cells.value(cells.cell(row, this.#sample.index));
      if (text === '' || text.startsWith('=') || !this.#hasKey(row)) continue;
      named++;
      if (isAudioFileName(text)) files++;
    }
    this.#endings = files * 2 > named;
    this.#fillGroups = this.#group !== undefined && this.#namesOncePerGroup(rows.data, this.#group.index);
  }

  /** Where a group's name stands on its first row only, the rows below belong to it too. */
  #namesOncePerGroup(data: readonly number[], column: number): boolean {
    const seen = new Set<string>();
    let empty = 0;
    for (const row of data) {
      if (this.#cells.isEmpty(row, this.#sample.index)) continue;
      const text = this.#cells.value(this.#cells.cell(row, column));
      if (text === '') {
        if (seen.size === 0) return false;
        empty++;
      } else if (seen.has(text)) return false;
      else seen.add(text);
    }
    return empty > 0;
  }

  ignore(row: number, why: string): void {
    const span = this.#cells.rowSpan(row);
    const text = shortened(this.#cells.text.slice(span.start, Math.min(span.end, span.start + 200)));
    this.#notes.add(
      'ignored',
      span,
      `Line ${this.#notes.line(span.start)} is no zone: it ${why} ("${text}").`,
      why,
    );
  }

  /** The sample of a row; `undefined`, with a note, where the row is no zone. */
  sampleOf(row: number): { cell: number; text: string } | undefined {
    const cell = this.#cells.cell(row, this.#sample.index);
    const given = this.#cells.value(cell);
    if (given === '') this.ignore(row, 'names no sample');
    else if (given.startsWith('=')) this.ignore(row, 'has a formula where the sample stands');
    else if (isTotal(given) && !isAudioFileName(given) && (this.#endings || !this.#hasKey(row)))
      this.ignore(row, 'sums up other rows');
    else if (this.#cells.filled(row) === 1 && this.#width > 2 && !isAudioFileName(given))
      this.ignore(row, 'is a line of text');
    else if (this.#endings && !isAudioFileName(given) && !this.#hasKey(row))
      this.ignore(row, 'names no sample file');
    else {
      const text = this.#oneLine(given, cell);
      if (text !== '') return { cell, text };
      this.ignore(row, 'names no sample');
    }
    return undefined;
  }

  #hasKey(row: number): boolean {
    return this.#keys.some(
      ({ index }) => readKeyRange(this.#cells.value(this.#cells.cell(row, index))) !== undefined,
    );
  }

  /** The name as given, for a sample that was not found; one without an ending is noted. */
  unresolved({ cell, text }: { cell: number; text: string }): string {
    if (isAudioFileName(text) || text.startsWith('*') || (!this.#endings && this.#saidEnding)) return text;
    this.#saidEnding = true;
    const span = this.#span(cell);
    const message = this.#endings
      ? `Line ${this.#notes.line(span.start)}: the sample name "${shortened(text)}" has no ending of an audio file; it is kept as it is.`
      : 'The sample names have no endings of audio files, such as .wav; they are kept as they are.';
    this.#notes.add('assumed', span, message, 'no ending');
    return text;
  }

  groupOf(row: number): { group: string; cell: number } {
    if (!this.#group) return { group: '', cell: -1 };
    const cell = this.#cells.cell(row, this.#group.index);
    const given = this.#cells.value(cell);
    if (given === '') {
      if (!this.#fillGroups || this.#lastGroup.group === '') return { group: '', cell: -1 };
      this.#notes.add(
        'assumed',
        this.#cells.rowSpan(row),
        `Line ${this.#notes.line(this.#cells.rowSpan(row).start)} names no group; it is put into "${shortened(this.#lastGroup.group)}", the one named above it.`,
        'group above',
      );
      return this.#lastGroup;
    }
    if (given.startsWith('=')) {
      const span = this.#span(cell);
      const message = `Line ${this.#notes.line(span.start)}: "${shortened(given)}" is a formula, not the name of a group; it is left out.`;
      this.#notes.add('dropped', span, message, 'group formula');
      return { group: '', cell: -1 };
    }
    this.#lastGroup = { group: this.#oneLine(given, cell), cell };
    return this.#lastGroup;
  }

  #span(cell: number): { start: number; end: number } {
    return { start: this.#cells.starts[cell] as number, end: this.#cells.ends[cell] as number };
  }

  #oneLine(text: string, cell: number): string {
    const line = text.replace(breaks, ' ').trim();
    if (line !== text && line !== '') {
      const span = this.#span(cell);
      const message = `Line ${this.#notes.line(span.start)}: line breaks or control characters in "${shortened(text)}" are written as spaces.`;
      this.#notes.add('approximated', span, message, 'one line');
    }
    return line;
  }
}
