import { meansAll } from '../../trade/limits';
import { scaleIn } from '../../trade/statedScale';
import type { VelocityReading } from '../../trade/velocityReading';
import { readVelocities } from '../../trade/velocityReading';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import { columnName } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

const most = 127;
const meanings = ['velocity_range', 'lovel', 'hivel'] as const;

/** Reads velocities, all columns of them in one scale: 0..127 as in MIDI, 0..1, or percent. */
export class VelocityColumns {
  readonly #readings: CellReadings<VelocityReading | undefined>;
  readonly #columns: readonly ColumnReading[];
  /** What the greatest velocity is written as. */
  readonly #greatest: number;

  constructor(readonly table: ZoneCells) {
    this.#readings = new CellReadings(table.cells, readVelocities);
    this.#columns = meanings.flatMap((meaning) => table.column(meaning) ?? []);
    this.#greatest = this.#scale();
  }

  /** Reads the velocities of all zones of the table. */
  read(): void {
    if (this.#greatest !== most) this.#noteScale();
    for (const column of this.#columns) this.#readColumn(column);
  }

  #readColumn(column: ColumnReading): void {
    const { zones, cells } = this.table;
    const lows = column.meaning === 'hivel' ? undefined : zones.column('lovel');
    const highs = column.meaning === 'lovel' ? undefined : zones.column('hivel');
    this.table.each(column, (zone, cell) => {
      const number = this.#greatest === most ? cells.digits(cell, 3) : -1;
      if (number >= 0 && number <= most) {
        lows?.set(zone, cell, number);
        highs?.set(zone, cell, number);
        return;
      }
      const reading = this.#readings.of(cell);
      const low = this.#velocity(reading?.low, reading);
      const high = this.#velocity(reading?.high, reading);
      if (!reading || Number.isNaN(low) || Number.isNaN(high)) {
        if (!meansAll(cells.plain(cell))) this.table.drop(cell, column, 'is no velocity, which is 0..127');
        return;
      }
      // Of a range that is open at one end the other end is given; a column for one end takes what there is.
      if (low !== undefined) lows?.set(zone, cell, low);
      if (high !== undefined) highs?.set(zone, cell, high);
    });
  }

  /** A velocity 0..127; NaN for one that is none, `undefined` for an open end. */
  #velocity(end: number | undefined, reading: VelocityReading | undefined): number | undefined {
    if (end === undefined || !reading) return undefined;
    if (reading.unit !== undefined && reading.unit !== 'percent') return Number.NaN;
    const greatest = reading.unit === 'percent' ? 100 : this.#greatest;
    if (greatest === most) return Number.isInteger(end) && end <= most ? end : Number.NaN;
    return end <= greatest ? Math.round((end / greatest) * most) : Number.NaN;
  }

  /** Headings and units say the scale; else fractions that are 1 at most. */
  #scale(): number {
    if (this.#columns.length === 0) return most;
    for (const { heading, unit } of this.#columns) {
      const stated = scaleIn(heading);
      if (unit === 'percent') return 100;
      if (stated?.low === 0 && (stated.high === 1 || stated.high === 100)) return stated.high;
    }
    let fraction = false;
    let percent = false;
    for (const column of this.#columns) {
      for (const row of this.table.data) {
        const cell = this.table.cellOf(row, column);
        if (cell < 0) continue;
        const number = this.table.cells.digits(cell, 3);
        if (number > 1) return most;
        if (number >= 0) continue;
        const reading = this.#readings.of(cell);
        if (reading?.unit === 'percent') {
          percent = true;
          continue;
        }
        for (const end of [reading?.low, reading?.high]) {
          if (end !== undefined && end > 1) return most;
          if (end !== undefined && !Number.isInteger(end)) fraction = true;
        }
      }
    }
    return percent ? 100 : fraction ? 1 : most;
  }

  #noteScale(): void {
    const { cells, data, notes } = this.table;
    const [column] = this.#columns;
    if (!column) return;
    const row = data.find((one) => this.table.cellOf(one, column) >= 0);
    const cell = row === undefined ? -1 : this.table.cellOf(row, column);
    const scale = this.#greatest === 100 ? 'percent' : '0..1';
    const span = { start: cells.starts[cell] ?? 0, end: cells.ends[cell] ?? 0 };
    // What is said of the whole column comes first.
    notes.row = -2;
    notes.add(
      'approximated',
      span,
      `The velocities in ${columnName(column)} are given as ${scale}; they are written as the nearest of 0..127.`,
    );
  }
}
