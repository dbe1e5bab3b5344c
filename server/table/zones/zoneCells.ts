import type { NoteNaming } from '../../trade/keyReading';
import type { ColumnMeaning } from '../../trade/meaning';
import type { NumberReading } from '../../trade/numberReading';
import { readNumber } from '../../trade/numberReading';
import type { TableCells } from '../cells/cells';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import type { ZoneList } from './zoneList';

/** What stands in cells that have no value. */
const noValue = /^(?:[-\u2212\u2010-\u2015_.?]+|n\/?a\.?|none|nil|null)$/i;
const longestNoValue = 4;
const mostFrameDigits = 15;

/** How the values of a table are read. */
export interface ValueOptions {
  /** Keys that are added to note names; they are read with middle C = C4. */
  keyShift: number;
  naming: NoteNaming;
  /** Frames a second of a sample, by the name in the table. */
  rateOf?: ((sample: string) => number | undefined) | undefined;
}

/** The cells of a table's zones by the columns that they stand in, and the notes on values that cannot be taken as they are. */
export class ZoneCells {
  /** The first and one past the last zone of the table. */
  readonly first: number;
  readonly end: number;
  readonly cells: TableCells;
  readonly #columns = new Map<ColumnMeaning, ColumnReading>();

  /** `data` are all rows that may be zones; the table's zones are the last ones of the list, from `first` on. */
  constructor(
    readonly zones: ZoneList,
    first: number,
    columns: readonly ColumnReading[],
    readonly data: readonly number[],
    readonly notes: TableNotes,
    readonly options: ValueOptions,
  ) {
    this.cells = zones.cells;
    this.first = first;
    this.end = zones.count;
    for (const column of columns) this.#columns.set(column.meaning, column);
  }

  /** The column of a meaning. */
  column(meaning: ColumnMeaning): ColumnReading | undefined {
    return this.#columns.get(meaning);
  }

  /** Calls `read` for each zone with a value in a column, with the cell. */
  each(column: ColumnReading, read: (zone: number, cell: number) => void): void {
    const { rows } = this.zones;
    const { notes } = this;
    for (let zone = this.first; zone < this.end; zone++) {
      const cell = this.cellOf(rows[zone], column);
      if (cell < 0) continue;
      notes.row = rows[zone];
      read(zone, cell);
    }
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
    const start = this.cells.starts[cell];
    const place = `${this.notes.place(start)}, ${columnName(column)}`;
    const span = { start, end: this.cells.ends[cell] };
    this.notes.add(kind, span, `${place}: ${message}`, `${kind} ${column.index}`);
  }

  /** The cell of a row in the column of a meaning; −1 where there is none or it is empty. */
  cellOf(row: number, column: ColumnReading | undefined): number {
    if (!column) return -1;
    const { cells } = this;
    const cell = cells.cell(row, column.index);
    if (cell < 0) return -1;
    const start = cells.starts[cell];
    const length = cells.ends[cell] - start;
    if (length === 0) return -1;
    const isLoop = column.meaning === 'loop';
    if (length > longestNoValue || isLoop) return cell;
    if (!cells.isRewritten(cell) && !mayBeNoValue(cells.codes, start, length)) return cell;
    return noValue.test(cells.value(cell)) ? -1 : cell;
  }

  /** The frame count in a cell; anything else is noted and answered as `undefined`. */
  frameIn(zone: number, cell: number, column: ColumnReading): number | undefined {
    if (column.unit === undefined || column.unit === 'frames') {
      const number = this.cells.digits(cell, mostFrameDigits);
      if (number >= 0) return number;
    }
    const reading = readNumber(this.cells.plain(cell), true);
    if (reading) return this.framesOf(reading, zone, cell, column);
    this.drop(cell, column, 'is no whole number of frames');
    return undefined;
  }

  /** A number as frames: a time is counted in them where the sample's rate is known. */
  framesOf(reading: NumberReading, zone: number, cell: number, column: ColumnReading): number | undefined {
    const unit = reading.unit ?? column.unit ?? 'frames';
    const rate = unit === 'frames' ? 1 : this.options.rateOf?.(this.zones.sample(zone));
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
}

/** Whether a short text could be one of {@link noValue}: it is outside ASCII, or starts with one of their signs and letters. */
function mayBeNoValue(codes: Uint8Array, start: number, length: number): boolean {
  const code = codes[start];
  if (code >= 128) return true;
  if (code === 45 && length > 1) {
    const next = codes[start + 1];
    return next < 48 || next > 57;
  }
  return code === 45 || code === 95 || code === 46 || code === 63 || code === 110 || code === 78;
}
