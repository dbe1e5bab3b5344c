import type { ColumnMeaning, Unit } from '../../trade/meaning';
import type { UnitPart } from '../../trade/phrases/unitFractions';
import { unitFractionIn, unitPartsIn } from '../../trade/phrases/unitFractions';
import type { NoteNaming } from '../../trade/readings/keyReading';
import { readNumber } from '../../trade/readings/numberReading';
import { remarkIn } from '../../trade/readings/remark';
import type { StatedScale } from '../../trade/statements/statedScales';
import type { Statements } from '../../trade/statements/statements';
import type { CellReadings } from '../cells/cellReadings';
import type { TableCells } from '../cells/cells';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened } from '../columns/columnReading';
import type { SampleEvidence } from '../sampleEvidence';
import type { TableNotes } from '../tableNotes';
import type { ColumnNumbers, ValueTable } from '../values/columnNumbers';
import { columnNumbers } from '../values/columnNumbers';
import type { ZoneList } from './zoneList';

/** What stands in cells that have no value. */
const noValue = /^(?:[-\u2212\u2010-\u2015_.?]+|n\/?a\.?|none|nil|null)$/i;
const longestNoValue = 4;

/** How the values of a table are read. */
export interface ValueOptions extends SampleEvidence {
  /** Keys that are added to note names; they are read with middle C = C4. */
  keyShift: number;
  naming: NoteNaming;
  /** All tables of the text. */
  tables: readonly ValueTable[];
  /** What the text around the tables says. */
  statements: Statements;
  /** Scales that a person has set for columns, by position from 0. */
  scales?: ReadonlyMap<number, string> | undefined;
}

/** The cells of a table's zones by the columns that they stand in, and the notes on values that cannot be taken as they are. */
export class ZoneCells {
  /** The first and one past the last zone of the table. */
  readonly first: number;
  readonly end: number;
  readonly cells: TableCells;
  readonly #columns = new Map<ColumnMeaning, ColumnReading>();
  /** By column, the cells above that empty ones have the value of, by row. */
  readonly #above = new Map<number, Map<number, number>>();

  /** `data` are all rows that may be zones; the table's zones are the last ones of the list, from `first` on. */
  constructor(
    readonly zones: ZoneList,
    first: number,
    readonly columns: readonly ColumnReading[],
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

  /** Calls `read` for each zone with a value in a column, with the cell; of zones that share merged cells, in `rows`. */
  each(
    column: ColumnReading,
    read: (zone: number, cell: number) => void,
    rows: Int32Array = this.zones.rows,
  ): void {
    const { notes, zones } = this;
    for (let zone = this.first; zone < this.end; zone++) {
      const cell = this.cellOf(rows[zone], column);
      if (cell < 0) continue;
      notes.row = zones.rows[zone];
      read(zone, cell);
    }
  }

  /** All numbers of a column and of those like it, those with a remark behind them too. */
  numbersIn(column: ColumnReading, read?: (text: string) => number): ColumnNumbers {
    const value = (text: string) => {
      const number = read?.(text) ?? Number.NaN;
      const remark = Number.isNaN(number) ? remarkIn(text) : undefined;
      return remark ? (readNumber(remark.value)?.number ?? Number.NaN) : number;
    };
    return columnNumbers(this.cells, this.options.tables, column, value);
  }

  /** What the text around the table says of the scale of a column. */
  stated({ meaning }: ColumnReading): StatedScale | undefined {
    return this.options.statements.scales.get(meaning);
  }

  /** The part of one of some units that the heading of a column or the text around says its numbers count, which is noted. */
  countedPart(column: ColumnReading, units: readonly Unit[]): UnitPart | undefined {
    const { heading, unit } = column;
    const fits = (one: Unit) => units.includes(one);
    const isOfHeading = unitFractionIn(heading, fits) === 'unknown';
    const said = unit === undefined ? this.stated(column)?.part : undefined;
    const part = isOfHeading ? unitPartsIn(heading, fits) : said;
    if (!part || !fits(part.whole)) return undefined;
    const by = `The numbers in ${columnName(column)} are divided by ${part.parts} to give ${part.whole}`;
    this.noteColumn(column, `${by}, as the heading or the text around says.`);
    return part;
  }

  /**
   * Reads a cell; where it is not read as it stands, without the remark behind its value, which is noted. `isRead` tells
   * readings that count.
   */
  reading<Reading>(
    readings: Pick<CellReadings<Reading>, 'of' | 'read'>,
    cell: number,
    column: ColumnReading,
    isRead: (reading: Reading) => boolean = (reading) => reading !== undefined,
  ): Reading {
    const first = readings.of(cell);
    if (isRead(first)) return first;
    const found = remarkIn(this.cells.plain(cell));
    const second = found && readings.read(found.value);
    if (!found || second === undefined || !isRead(second)) return first;
    const text = shortened(this.cells.value(cell));
    this.#note(
      'assumed',
      cell,
      column,
      `"${text}" is read as ${shortened(found.value)}; the rest is a remark.`,
    );
    return second;
  }

  /** Notes what is assumed of a whole column; such notes come first. */
  noteColumn(column: ColumnReading, message: string, kind: 'assumed' | 'approximated' = 'assumed'): void {
    const { cells, data, notes } = this;
    const row = data.find((one) => this.cellOf(one, column) >= 0);
    const cell = row === undefined ? -1 : this.cellOf(row, column);
    const sentence = message.charAt(0).toUpperCase() + message.slice(1);
    notes.row = -2;
    notes.add(kind, { start: cells.starts[cell] ?? 0, end: cells.ends[cell] ?? 0 }, sentence);
  }

  /** Notes that a cell's value is left out; `why` goes on from the cell's text, and `left` says what is. */
  drop(cell: number, column: ColumnReading, why: string, left = 'it is'): void {
    const text = this.cells.value(cell);
    const reason = text.startsWith('=') ? 'is a formula, not a value' : why;
    this.#note('dropped', cell, column, `"${shortened(text)}" ${reason}; ${left} left out.`);
  }

  /** Notes that a cell's value is written in another way; `how` goes on from the cell's text. */
  approximate(cell: number, column: ColumnReading, how: string): void {
    this.#note('approximated', cell, column, `"${shortened(this.cells.value(cell))}" ${how}.`);
  }

  /** Notes what is assumed of a cell's value; `what` goes on from the cell's text. */
  assume(cell: number, column: ColumnReading, what: string): void {
    this.#note('assumed', cell, column, `"${shortened(this.cells.value(cell))}" ${what}.`);
  }

  #note(
    kind: 'dropped' | 'approximated' | 'assumed',
    cell: number,
    column: ColumnReading,
    message: string,
  ): void {
    const start = this.cells.starts[cell];
    const place = `${this.notes.place(start)}, ${columnName(column)}`;
    const span = { start, end: this.cells.ends[cell] };
    this.notes.add(kind, span, `${place}: ${message}`, `${kind} ${column.index}`);
  }

  /** The nearest cell above an empty one that holds something, where the text says that its value goes on; else −1. */
  #cellAbove(row: number, index: number): number {
    if (this.options.statements.blankIsAbove === undefined) return -1;
    let above = this.#above.get(index);
    if (!above) {
      above = new Map();
      let last = -1;
      for (const one of this.data) {
        if (this.cells.filled(one) < 2) continue;
        if (!this.cells.isEmpty(one, index)) last = this.cells.cell(one, index);
        else if (last >= 0) above.set(one, last);
      }
      this.#above.set(index, above);
    }
    return above.get(row) ?? -1;
  }

  /** The cell of a row in the column of a meaning, or the one above that goes for it; −1 where there is none or it is empty. */
  cellOf(row: number, column: ColumnReading | undefined): number {
    if (!column) return -1;
    const { cells } = this;
    const own = cells.cell(row, column.index);
    const isBlank = own < 0 || cells.ends[own] === cells.starts[own];
    const cell = isBlank ? this.#cellAbove(row, column.index) : own;
    if (cell < 0) return -1;
    const start = cells.starts[cell];
    const length = cells.ends[cell] - start;
    const isLoop = column.meaning === 'loop';
    if (length > longestNoValue || isLoop) return cell;
    if (!cells.isRewritten(cell) && !mayBeNoValue(cells.codes, start, length)) return cell;
    return noValue.test(cells.value(cell)) ? -1 : cell;
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
