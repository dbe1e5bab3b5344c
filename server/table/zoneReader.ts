import { keyBounds } from './bounds';
import type { TableCells } from './cells';
import type { KeyReading, NoteNaming } from './keyValues';
import { readKeyRange } from './keyValues';
import { readLevel } from './levelValues';
import { LoopValues } from './loopValues';
import type { ColumnMeaning, ColumnReading } from './meaning';
import { columnName, keyMeanings, shortened } from './meaning';
import type { NumberReading } from './numberValues';
import { readNumber, readSequence } from './numberValues';
import { PanValues } from './panValues';
import { remembered } from './remembered';
import type { TableNotes } from './tableNotes';
import { TuningValues } from './tuningValues';
import type { ZoneValue } from './zone';
import { decimal } from './zone';

/** What stands in cells that have no value. */
const noValue = /^(?:[-\u2212\u2010-\u2015_.?]+|n\/?a\.?|none|nil|null)$/i;

/** Reads the values of rows, all but the sample and the group. */
export class ZoneReader {
  readonly #columns = new Map<ColumnMeaning, ColumnReading>();
  readonly #rangeIn = remembered((text) => readKeyRange(text, this.naming) ?? null);
  readonly #sequenceIn = remembered((text) => readSequence(text) ?? null);
  readonly #loop: LoopValues;
  readonly #tuning: TuningValues;
  readonly #pan: PanValues;
  #rate: number | undefined;
  readonly #hasRanges: boolean;
  #lastKeyRow = -1;

  constructor(
    readonly cells: TableCells,
    columns: readonly ColumnReading[],
    data: readonly number[],
    readonly notes: TableNotes,
    /** Keys that are added to note names; they are read with middle C = C4. */
    readonly keyShift: number,
    readonly naming: NoteNaming,
  ) {
    for (const column of columns) this.#columns.set(column.meaning, column);
    this.#hasRanges = keyMeanings.some((one) => one !== 'pitch_keycenter' && this.#columns.has(one));
    this.#loop = new LoopValues(this);
    this.#tuning = new TuningValues(this);
    this.#pan = new PanValues(this, data);
  }

  /** The column of a meaning. */
  column(meaning: ColumnMeaning): ColumnReading | undefined {
    return this.#columns.get(meaning);
  }

  /** The values of a row. `rate` is that of its sample, in frames a second; `undefined` where it is not known. */
  read(row: number, rate: number | undefined): ZoneValue[] {
    this.#rate = rate;
    const values: ZoneValue[] = [];
    this.#readKeys(row, values);
    this.#readVelocities(row, values);
    this.#tuning.read(row, values);
    this.#readLevels(row, values);
    this.#pan.read(row, values);
    this.#loop.read(row, values);
    this.#readFrame(row, 'offset', values);
    this.#readFrame(row, 'end', values);
    this.#readSequence(row, values);
    return values;
  }

  /** Notes that a cell's value is left out; `why` goes on from the cell's text. */
  drop(cell: number, column: ColumnReading, why: string): void {
    const text = this.cells.value(cell);
    const reason = text.startsWith('=') ? 'is a formula, not a value' : why;
    this.#note('dropped', cell, column, `"${shortened(text)}" ${reason}; it is left out.`);
  }

  /** Notes that a cell's value is written in another way; `how` goes on from the cell's text. */
  approximate(cell: number, column: ColumnReading, how: string): void {
    this.#note('approximated', cell, column, `"${shortened(this.cells.value(cell))}" ${how}.`);
  }

  #note(kind: 'dropped' | 'approximated', cell: number, column: ColumnReading, message: string): void {
    const start = this.cells.starts[cell] as number;
    const place = `${this.notes.place(start)}, ${columnName(column)}`;
    const span = { start, end: this.cells.ends[cell] as number };
    this.notes.add(kind, span, `${place}: ${message}`, `${kind} ${column.index}`);
  }

  /** The cell of a row in the column of a meaning; −1 where there is none or it is empty. */
  cellOf(row: number, column: ColumnReading | undefined): number {
    if (!column) return -1;
    const cell = this.cells.cell(row, column.index);
    if (cell < 0) return -1;
    const length = (this.cells.ends[cell] as number) - (this.cells.starts[cell] as number);
    if (length === 0) return -1;
    if (length > 4 || column.meaning === 'loop') return cell;
    const code = this.cells.text.charCodeAt(this.cells.starts[cell] as number);
    const isDigit = code >= 48 && code <= 57;
    return !isDigit && noValue.test(this.cells.value(cell)) ? -1 : cell;
  }

  /**
   * The row that gives the keys of a row: where key ranges stand once for several zones, as in merged cells, the last
   * one that has any.
   */
  #keyRow(row: number): number {
    const hasKeys = keyMeanings.some((meaning) => this.cellOf(row, this.#columns.get(meaning)) >= 0);
    if (hasKeys || this.#lastKeyRow < 0 || !this.#hasRanges) {
      if (hasKeys) this.#lastKeyRow = row;
      return row;
    }
    const span = this.cells.rowSpan(row);
    const message = `${this.notes.place(span.start)} gives no keys; those of the row above it are taken.`;
    this.notes.add('assumed', span, message, 'keys above');
    return this.#lastKeyRow;
  }

  #readKeys(zoneRow: number, values: ZoneValue[]): void {
    const row = this.#keyRow(zoneRow);
    const low = this.#keyOf(row, 'lokey');
    const high = this.#keyOf(row, 'hikey');
    const root = this.#keyOf(row, 'pitch_keycenter');
    const key = this.#keyOf(row, 'key');
    const range = this.#keyOf(row, 'key_range');
    if (key) values.push({ name: 'key', cell: key.cell, text: String(key.low) });
    if (range) {
      values.push({ name: 'lokey', cell: range.cell, text: String(range.low) });
      values.push({ name: 'hikey', cell: range.cell, text: String(range.high) });
    }
    if (low) values.push({ name: 'lokey', cell: low.cell, text: String(low.low) });
    if (high) values.push({ name: 'hikey', cell: high.cell, text: String(high.high) });
    if (root) values.push({ name: 'pitch_keycenter', cell: root.cell, text: String(root.low) });
  }

  #keyOf(row: number, meaning: ColumnMeaning): { cell: number; low: number; high: number } | undefined {
    const column = this.#columns.get(meaning);
    const cell = this.cellOf(row, column);
    if (!column || cell < 0) return undefined;
    const range = this.#rangeIn(this.cells.plain(cell));
    if (!range || (!range.single && (meaning === 'pitch_keycenter' || meaning === 'key'))) {
      this.drop(
        cell,
        column,
        range ? 'is a range where one key is expected' : 'is neither a key number nor a note name',
      );
      return undefined;
    }
    const low = this.#key(range.low);
    const high = this.#key(range.high);
    if (low >= keyBounds.least && high >= keyBounds.least && low <= keyBounds.most && high <= keyBounds.most)
      return { cell, low, high };
    this.drop(cell, column, 'lies outside the keys 0..127');
    return undefined;
  }

  #key(key: KeyReading): number {
    return key.number ?? (key.named ?? Number.NaN) + this.keyShift;
  }

  #readVelocities(row: number, values: ZoneValue[]): void {
    for (const meaning of ['velocity_range', 'lovel', 'hivel'] as const) {
      const column = this.#columns.get(meaning);
      const cell = this.cellOf(row, column);
      if (!column || cell < 0) continue;
      const range = this.#rangeIn(this.cells.plain(cell));
      const low = range?.low.number;
      const high = range?.high.number;
      if (low === undefined || high === undefined || low > 127 || high > 127) {
        this.drop(cell, column, 'is no velocity, which is 0..127');
        continue;
      }
      if (meaning !== 'hivel') values.push({ name: 'lovel', cell, text: String(low) });
      if (meaning !== 'lovel') values.push({ name: 'hivel', cell, text: String(high) });
    }
  }

  #readLevels(row: number, values: ZoneValue[]): void {
    for (const meaning of ['volume', 'attenuation'] as const) {
      const column = this.#columns.get(meaning);
      const cell = this.cellOf(row, column);
      if (!column || cell < 0) continue;
      if (meaning === 'attenuation' && this.cellOf(row, this.#columns.get('volume')) >= 0) {
        this.drop(cell, column, 'stands beside a level');
        continue;
      }
      const level = readLevel(this.cells.plain(cell), column.unit, meaning === 'attenuation');
      if ('fault' in level) this.drop(cell, column, level.fault);
      else {
        if (level.how) this.approximate(cell, column, level.how);
        if (level.decibels !== 0) values.push({ name: 'volume', cell, text: decimal(level.decibels) });
      }
    }
  }

  /** A frame count; 0 is where a sample starts, and no sample ends there. */
  #readFrame(row: number, meaning: 'offset' | 'end', values: ZoneValue[]): void {
    const column = this.#columns.get(meaning);
    const cell = this.cellOf(row, column);
    if (!column || cell < 0) return;
    const frame = this.frameIn(cell, column);
    if (frame !== undefined && frame > 0) values.push({ name: meaning, cell, text: String(frame) });
  }

  /** The frame count in a cell; anything else is noted and answered as `undefined`. */
  frameIn(cell: number, column: ColumnReading): number | undefined {
    const reading = readNumber(this.cells.plain(cell), true);
    if (reading) return this.framesOf(reading, cell, column);
    this.drop(cell, column, 'is no whole number of frames');
    return undefined;
  }

  /** A number as frames: a time is counted in them where the sample's rate is known. */
  framesOf(reading: NumberReading, cell: number, column: ColumnReading): number | undefined {
    const unit = reading.unit ?? column.unit ?? 'frames';
    const rate = unit === 'frames' ? 1 : this.#rate;
    const frames = reading.number * (rate ?? 1) * (unit === 'ms' ? 0.001 : 1);
    if ((unit !== 'frames' && unit !== 's' && unit !== 'ms') || !Number.isFinite(frames))
      this.drop(cell, column, 'is no whole number of frames');
    else if (rate === undefined)
      this.drop(cell, column, 'is a time; frames are needed here, and the rate of its sample is not known');
    else if (frames < 0) this.drop(cell, column, 'is below frame 0');
    else {
      const whole = Math.round(frames);
      if (Math.abs(frames - whole) > 1e-6)
        this.approximate(cell, column, `is written as the nearest frame, ${whole}`);
      return whole;
    }
    return undefined;
  }

  #readSequence(row: number, values: ZoneValue[]): void {
    for (const meaning of ['seq_position', 'seq_length'] as const) {
      const column = this.#columns.get(meaning);
      const cell = this.cellOf(row, column);
      if (!column || cell < 0) continue;
      const reading = this.#sequenceIn(this.cells.plain(cell));
      if (!reading || reading.position < 1 || reading.position > 100)
        this.drop(cell, column, 'is no round robin number from 1 to 100');
      else {
        values.push({ name: meaning, cell, text: String(reading.position) });
        if (meaning === 'seq_position' && reading.length !== undefined && reading.length >= reading.position)
          values.push({ name: 'seq_length', cell, text: String(reading.length) });
      }
    }
  }
}
