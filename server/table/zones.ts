import { Source } from '../model/source';
import { isAudioFileName } from './audioFileName';
import type { TableCells } from './cells';
import { spread } from './columnContents';
import { isTotal, readHeading } from './headings';
import type { NoteNaming } from './keyValues';
import { readKeyRange } from './keyValues';
import type { ColumnReading } from './meaning';
import { keyMeanings, shortened } from './meaning';
import type { MiddleC } from './octave';
import { octaveShifts } from './octave';
import { TableNotes } from './tableNotes';
import type { TableRows } from './tableRows';
import type { Zone, ZoneValue } from './zone';
import { ZoneReader } from './zoneReader';

const breaks = /[\u0000-\u001f\u007f\u0085\u2028\u2029]+/g;
const anyBreak = /[\u0000-\u001f\u007f\u0085\u2028\u2029]/;

/** Whether samples have endings is found out from so many rows. */
const mostLooks = 500;

/** How the zones of a text are read. */
export interface ZoneOptions {
  middleC: MiddleC | undefined;
  naming: NoteNaming;
  /** The path to write for a sample, by the name in the table. */
  resolveSample?: ((sample: string) => string | undefined) | undefined;
  /** Frames a second of a sample, by the name in the table. */
  rateOf?: ((sample: string) => number | undefined) | undefined;
}

/** Reads the rows of a table that are zones, and notes those that are not. */
export function readZones(
  cells: TableCells,
  rows: TableRows,
  columns: readonly ColumnReading[],
  { middleC, naming, resolveSample, rateOf }: ZoneOptions,
  notes: TableNotes,
): Zone[] {
  const reader = new ZoneReader(cells, columns, rows.data, notes, octaveShifts[middleC ?? 'C4'], naming);
  const names = new NameReader(cells, rows, columns, notes);
  const zones: Zone[] = [];
  for (const { row, why } of rows.others) names.pass(row, why);
  for (const row of rows.data) {
    const sample = names.sampleOf(row);
    if (!sample) continue;
    const { group, cell: groupCell } = names.groupOf(row);
    const values = reader.read(row, rateOf?.(sample.text));
    values.unshift({
      name: 'sample',
      cell: sample.cell,
      text: resolveSample?.(sample.text) ?? names.unresolved(sample),
    });
    sortByCell(values);
    zones.push({ row, group, groupCell, values });
  }
  return zones;
}

/** The sample names of the zones of a table, as {@link ZoneOptions.resolveSample} is given them. */
export function sampleNames(
  cells: TableCells,
  { rows, columns }: { rows: TableRows; columns: readonly ColumnReading[] },
): string[] {
  const names = new NameReader(cells, rows, columns, new TableNotes(new Source('', cells.text)));
  return rows.data.flatMap((row) => names.sampleOf(row)?.text ?? []);
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
  readonly #sections: ReadonlyMap<number, number>;
  /** Cells with titles that name groups. */
  readonly #titles: ReadonlySet<number>;
  #saidEnding = false;

  constructor(cells: TableCells, rows: TableRows, columns: readonly ColumnReading[], notes: TableNotes) {
    this.#cells = cells;
    this.#width = rows.width;
    // Where groups stand on lines of their own, as in an outline, the column of groups is empty on all other rows.
    this.#group = columns.find(
      ({ meaning, index }) => meaning === 'group' && rows.data.some((row) => !cells.isEmpty(row, index)),
    );
    this.#sections = this.#group ? new Map() : rows.sections;
    this.#titles = new Set(this.#sections.values());
    this.#notes = notes;
    this.#sample = columns.find(({ meaning }) => meaning === 'sample') as ColumnReading;
    this.#keys = columns.filter(({ meaning }) => keyMeanings.includes(meaning));
    let files = 0;
    let named = 0;
    for (const row of spread(rows.data, mostLooks)) {
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

  /** Notes a row that is no zone; the title of a section names a group. */
  pass(row: number, why: string): void {
    const first = this.#cells.rowFirst[row] as number;
    for (let cell = first; cell < (this.#cells.rowFirst[row + 1] as number); cell++) {
      if (!this.#titles.has(cell)) continue;
      const span = this.#span(cell);
      const title = shortened(this.#cells.value(cell));
      this.#notes.add(
        'assumed',
        span,
        `${this.#notes.place(span.start)}, "${title}", is taken for the name of the group of the rows below it.`,
        'title',
      );
      return;
    }
    this.ignore(row, why);
  }

  ignore(row: number, why: string): void {
    const span = this.#cells.rowSpan(row);
    const text = shortened(this.#rowText(row, span));
    this.#notes.add(
      'ignored',
      span,
      `${this.#notes.place(span.start)} is no zone: it ${why} ("${text}").`,
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
      ? `${this.#notes.place(span.start)}: the sample name "${shortened(text)}" has no ending of an audio file; it is kept as it is.`
      : 'The sample names have no endings of audio files, such as .wav; they are kept as they are.';
    this.#notes.add('assumed', span, message, 'no ending');
    return text;
  }

  #rowText(row: number, span: { start: number; end: number }): string {
    if (this.#cells.rowSpans === undefined)
      return this.#cells.text.slice(span.start, Math.min(span.end, span.start + 200));
    const width = Math.min(this.#cells.width(row), 20);
    const texts = Array.from({ length: width }, (_, at) => this.#cells.value(this.#cells.cell(row, at)));
    return texts.join(' ').trim();
  }

  groupOf(row: number): { group: string; cell: number } {
    if (!this.#group) {
      const cell = this.#sections.get(row) ?? -1;
      return { group: cell < 0 ? '' : titleOf(this.#oneLine(this.#cells.value(cell), cell)), cell };
    }
    const cell = this.#cells.cell(row, this.#group.index);
    const given = this.#cells.value(cell);
    if (given === '') {
      if (!this.#fillGroups || this.#lastGroup.group === '') return { group: '', cell: -1 };
      this.#notes.add(
        'assumed',
        this.#cells.rowSpan(row),
        `${this.#notes.place(this.#cells.rowSpan(row).start)} names no group; it is put into "${shortened(this.#lastGroup.group)}", the one named above it.`,
        'group above',
      );
      return this.#lastGroup;
    }
    if (given.startsWith('=')) {
      const span = this.#span(cell);
      const message = `${this.#notes.place(span.start)}: "${shortened(given)}" is a formula, not the name of a group; it is left out.`;
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
    if (!anyBreak.test(text)) return text.trim();
    const line = text.replace(breaks, ' ').trim();
    if (line !== text && line !== '') {
      const span = this.#span(cell);
      const message = `${this.#notes.place(span.start)}: line breaks or control characters in "${shortened(text)}" are written as spaces.`;
      this.#notes.add('approximated', span, message, 'one line');
    }
    return line;
  }
}

/** The values of a region stand in the order of its cells, so that offsets rise. */
function sortByCell(values: ZoneValue[]): void {
  for (let at = 1; at < values.length; at++) {
    const value = values[at] as ZoneValue;
    let place = at;
    while (place > 0 && (values[place - 1] as ZoneValue).cell > value.cell) {
      values[place] = values[place - 1] as ZoneValue;
      place--;
    }
    values[place] = value;
  }
}

/** The name in a title such as `== Soft ==`, `[Soft]` or `Group: Soft`. */
function titleOf(text: string): string {
  const bare = text.replace(/^[\s#=*:<>[\]_~-]+|[\s#=*:<>[\]_~-]+$/g, '');
  const labelled = /^([^:]{1,30}):\s*(.+)$/.exec(bare);
  if (labelled && readHeading(labelled[1] as string)?.meaning === 'group') return labelled[2] as string;
  return bare === '' ? text : bare;
}
