import { panBounds } from '../../trade/bounds';
import { rounded } from '../../trade/decimal';
import { readPan } from '../../trade/panReading';
import { scaleIn } from '../../trade/statedScale';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import { columnName } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

/**
 * How a column counts pan: −100..100, −1..1, 0..127 with 64 in the middle as in MIDI controller 10, or between two ends
 * that its heading states.
 */
type Scale = 'hundred' | 'one' | 'midi' | { low: number; high: number };

/** Reads pan positions, the whole column in one scale. */
export class PanColumn {
  readonly #column: ColumnReading | undefined;
  readonly #positions: CellReadings<number>;

  constructor(readonly table: ZoneCells) {
    this.#column = table.column('pan');
    this.#positions = new CellReadings(table.cells, (text) => readPan(text) ?? Number.NaN);
  }

  /** Reads the pan positions of all zones of the table. */
  read(): void {
    const column = this.#column;
    if (!column) return;
    const scale = this.#scale(column);
    this.#noteScale(scale, column);
    const pans = this.table.zones.column('pan');
    this.table.each(column, (zone, cell) => {
      let pan = this.#position(cell);
      if (!Number.isFinite(pan)) {
        this.table.drop(cell, column, 'is no pan position');
        return;
      }
      if (scale === 'one') pan = Math.round(pan * 1e6) / 1e4;
      else if (scale === 'midi') pan = Math.round(((pan - 64) / (pan < 64 ? 64 : 63)) * 10_000) / 100;
      else if (scale !== 'hundred') pan = Math.round(between(scale, pan) * 10_000) / 100;
      const written = Math.min(panBounds.most, Math.max(panBounds.least, pan));
      if (written !== pan)
        this.table.approximate(cell, column, `is beyond −100..100; it is written as ${written}`);
      if (written !== 0) pans.set(zone, cell, rounded(written));
    });
  }

  #position(cell: number): number {
    const number = this.table.cells.number(cell);
    return Number.isNaN(number) ? this.#positions.of(cell) : number;
  }

  #noteScale(scale: Scale, column: ColumnReading): void {
    if (scale === 'hundred') return;
    const { cells, data, notes } = this.table;
    const row = data.find((one) => this.table.cellOf(one, column) >= 0);
    const cell = row === undefined ? -1 : this.table.cellOf(row, column);
    const said =
      typeof scale === 'object'
        ? `the heading gives the values ${scale.low}..${scale.high}, taken for left to right with ${middleOf(scale)} in the middle`
        : scale === 'one'
          ? 'all its values lie within −1..1, which is taken for left to right'
          : 'its values reach beyond 100 and none is negative, so 0..127 with 64 in the middle is taken for left to right';
    const span = { start: cells.starts[cell] ?? 0, end: cells.ends[cell] ?? 0 };
    // What is said of the whole column comes first.
    notes.row = -2;
    notes.add('assumed', span, `In ${columnName(column)} ${said}.`);
  }

  #scale(column: ColumnReading): Scale {
    const stated = scaleIn(column.heading);
    if (stated) return stated.low === -100 && stated.high === 100 ? 'hundred' : stated;
    let fraction = false;
    let least = 0;
    let greatest = 0;
    for (const row of this.table.data) {
      const cell = this.table.cellOf(row, column);
      if (cell < 0) continue;
      const number = this.#position(cell);
      if (Number.isNaN(number)) continue;
      if (!Number.isInteger(number)) fraction = true;
      least = Math.min(least, number);
      greatest = Math.max(greatest, number);
    }
    if (fraction && least >= -1 && greatest <= 1) return 'one';
    return least >= 0 && greatest > 100 && greatest <= 127 ? 'midi' : 'hundred';
  }
}

/** The value in the middle: 0 where the ends lie on both sides of it, and 64 of 0..127. */
function middleOf({ low, high }: { low: number; high: number }): number {
  if (low === 0 && high === 127) return 64;
  return low < 0 && high > 0 ? 0 : (low + high) / 2;
}

/** A value between two ends as −1..1. */
function between(ends: { low: number; high: number }, value: number): number {
  const middle = middleOf(ends);
  return (value - middle) / (value < middle ? middle - ends.low : ends.high - middle);
}
