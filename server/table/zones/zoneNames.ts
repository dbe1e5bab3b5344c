import { isAudioFileName } from '../../model/fileNames';
import { readHeading } from '../../trade/headings/headings';
import { isTotal } from '../../trade/headings/sums';
import { keyMeanings } from '../../trade/meaning';
import { readKeyRange } from '../../trade/readings/keyReading';
import { saysNoSample } from '../../trade/readings/noSample';
import { isStillToCome } from '../../trade/readings/stillToCome';
import { statedSettings } from '../../trade/statements/settings';
import type { TableCells } from '../cells/cells';
import { DistinctTexts } from '../cells/distinctTexts';
import { namesAudioFile } from '../cells/namesAudioFile';
import type { TableRows } from '../cells/tableRows';
import { evenlySpread } from '../columns/columnContents';
import type { ColumnReading } from '../columns/columnReading';
import { shortened } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import { SpokenSamples } from './spokenSamples';
import type { ZoneList } from './zoneList';

const breaks = /[\u0000-\u001f\u007f\u0085\u2028\u2029]+/g;
const anyBreak = /[\u0000-\u001f\u007f\u0085\u2028\u2029]/;

/** Signs that show nothing; two of them join or part letters of some scripts. */
const unseen =
  /[\u200b\u2060\ufeff]|(?<=^|[\u0000-\u007f])[\u200c\u200d]|[\u200c\u200d](?=$|[\u0000-\u007f])/gu;

const equalsSign = 61;

/** Whether samples have endings is found out from so many rows. */
const mostLooks = 500;

/** Reads the cells that are names: the sample and the group. */
export class NameReader {
  readonly #cells: TableCells;
  readonly #notes: TableNotes;
  readonly #sample: ColumnReading;
  readonly #group: ColumnReading | undefined;
  readonly #keys: readonly ColumnReading[];
  /** Whether most samples of rows with keys have the ending of an audio file. */
  readonly #endings: boolean;
  readonly #fillGroups: boolean;
  /** The group named last, and where. */
  #lastGroup = 0;
  #lastCell = -1;
  readonly #groupTexts: DistinctTexts;
  /** By number of the text, its group in the list of zones, and whether it holds line breaks. */
  readonly #groupNumbers: number[] = [];
  readonly #groupBreaks: boolean[] = [];
  readonly #width: number;
  readonly #sections: ReadonlyMap<number, number>;
  /** Cells with titles that name groups. */
  readonly #titles: ReadonlySet<number>;
  readonly #spoken: SpokenSamples;
  #saidEnding = false;

  constructor(cells: TableCells, rows: TableRows, columns: readonly ColumnReading[], notes: TableNotes) {
    this.#cells = cells;
    this.#groupTexts = new DistinctTexts(cells);
    this.#width = rows.width;
    // Where groups stand on lines of their own, as in an outline, the column of groups is empty on all other rows.
    this.#group = columns.find(
      ({ meaning, index }) => meaning === 'group' && rows.data.some((row) => !cells.isEmpty(row, index)),
    );
    this.#sections = this.#group ? new Map() : rows.sections;
    this.#notes = notes;
    this.#sample = columns.find(({ meaning }) => meaning === 'sample') as ColumnReading;
    this.#titles = new Set(
      [...this.#sections]
        .filter(([row]) => cells.filled(row) > 1 || this.hasSample(row))
        .map(([, title]) => title),
    );
    this.#spoken = new SpokenSamples(cells, rows.data, this.#sample.index);
    this.#keys = columns.filter(({ meaning }) => keyMeanings.includes(meaning));
    let files = 0;
    let named = 0;
    for (const row of evenlySpread(rows.data, mostLooks)) {
      const text = cells.value(cells.cell(row, this.#sample.index));
      if (text === '' || text.startsWith('=') || !this.#hasKey(row)) continue;
      if (isAudioFileName(text)) files++;
      else if (saysNoSample(text, true)) continue;
      named++;
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
    const first = this.#cells.rowFirst[row];
    for (let cell = first; cell < this.#cells.rowFirst[row + 1]; cell++) {
      if (!this.#titles.has(cell)) continue;
      const span = this.#span(cell);
      const title = shortened(this.#cells.value(cell));
      this.#notes.add(
        'assumed',
        span,
        `${this.#notes.place(span.start)}, "${title}", is read as the name of the group of the rows below it.`,
        'title',
      );
      return;
    }
    this.ignore(row, why);
  }

  ignore(row: number, why: string): void {
    const span = this.#cells.rowSpan(row);
    const text = shortened(this.#rowText(row, span));
    const message = `${this.#notes.place(span.start)} is no zone: it ${why} ("${text}").`;
    // What puts a row right is not followed; each such line is told by itself.
    const spoken = this.hasSample(row) ? undefined : this.#spoken.in(row);
    if (spoken === undefined) this.#notes.add('ignored', span, message, why);
    else {
      const more = ` It speaks of "${shortened(spoken)}": see whether the row of that sample is right.`;
      this.#notes.add('assumed', span, `${message}${more}`, 'spoken');
    }
  }

  /** The cell that names the sample of a row; −1, with a note, where the row is no zone. */
  sampleCell(row: number): number {
    const cells = this.#cells;
    const cell = cells.cell(row, this.#sample.index);
    if (this.#saysEnding(row, cell)) {
      this.ignore(row, 'is a line of text');
      return -1;
    }
    // Names of audio files need no second look.
    if (namesAudioFile(cells, cell) && !this.#isFormula(cell)) return cell;
    const given = cells.value(cell);
    const isFile = isAudioFileName(given);
    if (given === '') this.ignore(row, 'names no sample');
    else if (/^=(?!=)/.test(given)) this.ignore(row, 'has a formula where the sample stands');
    else if (!isFile && isTotal(given) && (this.#endings || !this.#hasKey(row)))
      this.ignore(row, 'sums up other rows');
    else if (!isFile && cells.filled(row) === 1 && this.#width > 2) this.ignore(row, 'is a line of text');
    else if (!isFile && this.#endings && !this.#hasKey(row)) this.ignore(row, 'names no sample file');
    else if (!isFile && isStillToCome(given)) this.ignore(row, 'names a sample that is still to come');
    else if (oneLine(given) === '' || (!isFile && saysNoSample(given, this.#endings)))
      this.ignore(row, 'names no sample');
    else return cell;
    return -1;
  }

  /** Whether a row names an audio file. */
  hasSample(row: number): boolean {
    return namesAudioFile(this.#cells, this.#cells.cell(row, this.#sample.index));
  }

  /** The name in a cell on one line, with a note where it was not; `undefined` where it is the text of the cell as it is. */
  otherName(cell: number): string | undefined {
    const { codes, text, starts, ends } = this.#cells;
    const ending = this.#endingOf(cell);
    let plain = ending === '' && !this.#cells.isRewritten(cell);
    const end = ends[cell];
    for (let at = starts[cell]; at < end && plain; at++) plain = codes[at] >= 32 && codes[at] < 127;
    if (plain) return undefined;
    const name = `${this.#oneLine(this.#cells.value(cell), cell)}${ending}`;
    return name === text.slice(starts[cell], end) ? undefined : name;
  }

  /** Whether a row is the line that gives the ending of all files, which may end with it. */
  #saysEnding(row: number, cell: number): boolean {
    const { statedEnding } = this.#cells;
    if (statedEnding === undefined || this.#cells.filled(row) !== 1) return false;
    return this.#cells.plain(cell).includes(statedEnding.text);
  }

  /** The ending that the text around gives for a name without one; empty where it gives none. */
  #endingOf(cell: number): string {
    const { statedEnding } = this.#cells;
    if (statedEnding === undefined || namesAudioFile(this.#cells, cell)) return '';
    return this.#cells.value(cell).startsWith('*') ? '' : statedEnding.is;
  }

  #isFormula(cell: number): boolean {
    const cells = this.#cells;
    if (cells.isRewritten(cell)) return cells.value(cell).startsWith('=');
    return cells.codes[cells.starts[cell]] === equalsSign;
  }

  #hasKey(row: number): boolean {
    return this.#keys.some(({ index }) => {
      const cell = this.#cells.cell(row, index);
      // A number of up to three digits is a key.
      return this.#cells.digits(cell, 3) >= 0 || readKeyRange(this.#cells.value(cell)) !== undefined;
    });
  }

  /** Notes that a sample that was not found has no ending, or the one that the text gives. */
  noteEnding(zones: ZoneList, zone: number): void {
    const cell = zones.column('sample').cells[zone];
    const { statedEnding } = this.#cells;
    if (statedEnding && !this.#saidEnding && this.#endingOf(cell) !== '') {
      this.#saidEnding = true;
      const message = `The ending ${statedEnding.is} is put behind the sample names, as "${shortened(statedEnding.text)}" says.`;
      this.#notes.add('assumed', this.#span(cell), message);
    }
    if (zones.otherSample(zone) === undefined && namesAudioFile(this.#cells, cell)) return;
    if (!this.#endings && this.#saidEnding) return;
    const text = zones.sample(zone);
    if (isAudioFileName(text) || text.startsWith('*')) return;
    this.#saidEnding = true;
    const span = this.#span(cell);
    const message = this.#endings
      ? `${this.#notes.place(span.start)}: the sample name "${shortened(text)}" has no ending of an audio file; it is kept as it is.`
      : 'The sample names have no endings of audio files, such as .wav; they are kept as they are.';
    this.#notes.row = zones.rows[zone];
    this.#notes.add('assumed', span, message, 'no ending');
  }

  #rowText(row: number, span: { start: number; end: number }): string {
    if (this.#cells.rowSpans === undefined)
      return this.#cells.text.slice(span.start, Math.min(span.end, span.start + 200));
    const width = Math.min(this.#cells.width(row), 20);
    const texts = Array.from({ length: width }, (_, at) => this.#cells.value(this.#cells.cell(row, at)));
    return texts.join(' ').trim();
  }

  /** Adds the zone of a row whose sample stands in a cell, in its group; answers its number. */
  addZone(zones: ZoneList, row: number, cell: number): number {
    const zone = zones.add(row, cell);
    const sample = this.otherName(cell);
    if (sample !== undefined) zones.setSample(zone, sample);
    this.#setGroup(zones, zone);
    return zone;
  }

  #setGroup(zones: ZoneList, zone: number): void {
    const cells = this.#cells;
    const row = zones.rows[zone];
    if (!this.#group) {
      const cell = this.#sections.get(row) ?? -1;
      if (cell < 0) return;
      zones.groups[zone] = zones.groupOf(titleOf(this.#oneLine(cells.value(cell), cell)));
      zones.groupCells[zone] = zones.groups[zone] === 0 ? -1 : cell;
      return;
    }
    const cell = cells.cell(row, this.#group.index);
    if (cell < 0 || cells.starts[cell] === cells.ends[cell]) this.#fillGroup(zones, zone);
    else if (this.#isFormula(cell)) {
      const span = this.#span(cell);
      const message = `${this.#notes.place(span.start)}: "${shortened(cells.value(cell))}" is a formula, not the name of a group; it is left out.`;
      this.#notes.add('dropped', span, message, 'group formula');
    } else {
      zones.groups[zone] = this.#groupIn(cell, zones);
      zones.groupCells[zone] = cell;
      this.#lastGroup = zones.groups[zone];
      this.#lastCell = cell;
    }
  }

  /** A zone that names no group belongs to the one above it, where groups are named once. */
  #fillGroup(zones: ZoneList, zone: number): void {
    if (!this.#fillGroups || this.#lastGroup === 0) return;
    const span = this.#cells.rowSpan(zones.rows[zone]);
    const name = shortened(zones.groupNames[this.#lastGroup]);
    const message = `${this.#notes.place(span.start)} names no group; it is put into "${name}", the one named above it.`;
    this.#notes.add('assumed', span, message, 'group above');
    zones.groups[zone] = this.#lastGroup;
    zones.groupCells[zone] = this.#lastCell;
  }

  #groupIn(cell: number, zones: ZoneList): number {
    const number = this.#groupTexts.numberOf(cell);
    let group = this.#groupNumbers[number];
    if (group === undefined) {
      group = zones.groupOf(oneLine(this.#cells.value(cell)));
      this.#groupNumbers.push(group);
      this.#groupBreaks.push(anyBreak.test(this.#cells.value(cell)));
    }
    if (this.#groupBreaks[number]) this.#oneLine(this.#cells.value(cell), cell);
    return group;
  }

  #span(cell: number): { start: number; end: number } {
    return { start: this.#cells.starts[cell], end: this.#cells.ends[cell] };
  }

  /** A text on one line, noted where it was not. */
  #oneLine(text: string, cell: number): string {
    const line = oneLine(text);
    if (line !== text && line !== '' && anyBreak.test(text)) {
      const span = this.#span(cell);
      const message = `${this.#notes.place(span.start)}: line breaks or control characters in "${shortened(text)}" are written as spaces.`;
      this.#notes.add('approximated', span, message, 'one line');
    }
    return line;
  }
}

function oneLine(text: string): string {
  return (anyBreak.test(text) ? text.replace(breaks, ' ') : text).replace(unseen, '').trim();
}

/** The name in a title such as `== Soft ==`, `[Soft]` or `Group: Soft`. */
function titleOf(text: string): string {
  const bare = text.replace(/^[\s#=*:<>[\]_~-]+|[\s#=*:<>[\]_~-]+$/g, '');
  const labelled = /^([^:]{1,30}):\s*(.+)$/.exec(bare);
  if (labelled && readHeading(labelled[1])?.meaning === 'group') return labelled[2];
  const settings = statedSettings(text);
  if (settings && settings.name !== '') return settings.name;
  return bare === '' ? text : bare;
}
