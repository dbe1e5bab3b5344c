import { scaleIn } from '../../trade/headings/statedScale';
import { meansAll, meansOpenEnd } from '../../trade/readings/limits';
import type { VelocityReading } from '../../trade/readings/velocityReading';
import { readVelocities } from '../../trade/readings/velocityReading';
import { numbersOf } from '../../trade/scales/numbers';
import type { VelocityEnds } from '../../trade/scales/velocityScale';
import { velocityScale } from '../../trade/scales/velocityScale';
import { velocityShares } from '../../trade/scales/velocityShares';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened, statedReason } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';
import { swapInverted } from './keyColumns';
import type { MergedRows } from './mergedRows';
import { closeVelocities } from './openVelocities';

const midi = 127;
const meanings = ['velocity_range', 'lovel', 'hivel'] as const;
const scales: readonly number[] = [midi, 100, 1, 128, 255];
const mostChosen = 256;
/** What binary arithmetic adds to or takes from a whole number. */
const slack = 1e-9;
/** Layers that end here or above are taken for all that there are (our choice). */
const mostOpen = 120;

/** Reads velocities, all columns of them in one scale: 0..127 as in MIDI, 0..1, percent, or another one. */
export class VelocityColumns {
  readonly #readings: CellReadings<VelocityReading | undefined>;
  readonly #columns: readonly ColumnReading[];
  /** What the greatest velocity is written as. */
  readonly #greatest: number;
  /** Whether whole numbers count in steps of the scale, so that layers that follow one another meet. */
  #isStepped = false;
  /** Why the scale was taken. */
  #reason = statedReason;
  /** Whether a layer ends where the next one begins. */
  #isTouching = false;

  constructor(
    readonly table: ZoneCells,
    readonly merged: MergedRows,
  ) {
    this.#readings = new CellReadings(table.cells, readVelocities);
    this.#columns = meanings.flatMap((meaning) => table.column(meaning) ?? []);
    this.#greatest = this.#scale();
  }

  /** Reads the velocities of all zones of the table. */
  read(): void {
    for (const column of this.#columns) this.#readColumn(column);
    closeVelocities(this.table);
    swapInverted(this.table, 'lovel', 'hivel');
  }

  #readColumn(column: ColumnReading): void {
    const { zones, cells } = this.table;
    const lows = column.meaning === 'hivel' ? undefined : zones.column('lovel');
    const highs = column.meaning === 'lovel' ? undefined : zones.column('hivel');
    const other = column.meaning === 'lovel' ? 'hivel' : column.meaning === 'hivel' ? 'lovel' : undefined;
    const label = (scale: number) => `0 to ${scale}`;
    column.scale = {
      taken: String(this.#greatest),
      reason: this.#reason,
      options: [...new Set([...scales, this.#greatest])].map((one) => ({
        id: String(one),
        label: label(one),
      })),
    };
    const read = (zone: number, cell: number) => {
      const number = this.#greatest === midi ? cells.digits(cell, 3) : -1;
      if (number >= 0 && number <= midi) {
        lows?.set(zone, cell, number);
        highs?.set(zone, cell, number);
        return;
      }
      const reading = this.table.reading(this.#readings, cell, column);
      const low = this.#velocity(reading?.low, reading, false);
      const high = this.#velocity(reading?.high, reading, true);
      if (!reading || Number.isNaN(low) || Number.isNaN(high)) {
        const isEnd = column.meaning !== 'velocity_range';
        if (!meansAll(cells.plain(cell)) && !(isEnd && meansOpenEnd(cells.plain(cell))))
          this.table.drop(cell, column, `is not a velocity from 0 to ${this.#greatest}`);
        return;
      }
      // Of a range that is open at one end the other end is given; a column for one end takes what there is.
      if (low !== undefined) lows?.set(zone, cell, low);
      if (high !== undefined) highs?.set(zone, cell, high);
      // A range in the column of one end, as in a merged cell, gives the other too where that has no cell of its own.
      if (other === undefined || low === undefined || high === undefined || low === high) return;
      const ends = zones.column(other);
      if (ends.cells[zone] < 0) ends.set(zone, cell, other === 'hivel' ? high : low);
    };
    this.table.each(column, read, this.merged.velocityRows);
  }

  /** A velocity 0..127; NaN for one that is none, `undefined` for an open end. */
  #velocity(
    end: number | undefined,
    reading: VelocityReading | undefined,
    isHigh: boolean,
  ): number | undefined {
    if (end === undefined || !reading) return undefined;
    if (reading.unit !== undefined && reading.unit !== 'percent') return Number.NaN;
    const greatest = reading.unit === 'percent' ? 100 : this.#greatest;
    if (greatest === midi) return Number.isInteger(end) && end <= midi ? end : Number.NaN;
    if (end > greatest) return Number.NaN;
    const exact = (end / greatest) * midi;
    if (this.#isTouching) {
      // Of a little less than nothing the ceiling is −0.
      const first = Math.max(0, Math.ceil(exact - slack));
      return isHigh && end < greatest ? Math.max(0, first - 1) : first;
    }
    const scaled = (one: number) => Math.round((one / greatest) * midi);
    // A layer begins right above the one that ends a step below.
    const isStep = this.#isStepped && !isHigh && Number.isInteger(end) && end > 0;
    return isStep ? scaled(end - 1) + 1 : scaled(end);
  }

  /** What is chosen, what headings, units and the text around the table say, else what the numbers show. */
  #scale(): number {
    const [first] = this.#columns;
    if (!first) return midi;
    const seen = this.#look();
    const { options } = this.table;
    for (const { index } of this.#columns) {
      const chosen = Number(options.scales?.get(index));
      if (!Number.isInteger(chosen) || chosen < 1 || chosen > mostChosen) continue;
      this.#reason = '';
      return this.#stepped(chosen);
    }
    for (const { heading, unit } of this.#columns) {
      const stated = scaleIn(heading);
      if (unit === 'percent') return this.#told(100, first, 'are percentages');
      if (stated && (isScale(stated) || isCounted(stated, seen.all.greatest)))
        return this.#told(stated.high, first, `count from ${stated.low} to ${stated.high}`);
    }
    const around = this.table.stated(first);
    const high = around?.unit === 'percent' ? 100 : around?.high;
    if (around && high !== undefined && isScale({ low: around.low ?? 0, high }))
      return this.#told(high, first, `count up to ${high}, as "${shortened(around.text)}" says`);
    return this.#found(first, seen);
  }

  #found(first: ColumnReading, seen: VelocityEnds): number {
    const { scale, isOpen, confidence, reason } = velocityScale(seen);
    this.#reason = reason;
    const { greatest, whole, numeric } = seen.all;
    if (scale === 1 && whole === numeric && !seen.inPercent) return midi;
    if (scale !== midi && confidence >= 0.7) {
      const how =
        scale === 100 && seen.inPercent ? 'are percentages' : `are taken to count from 0 to ${scale}`;
      const or =
        scale < midi && seen.shares && !seen.inPercent
          ? ' If they count to 127, say so in the heading, as in "Velocity (0..127)".'
          : '';
      return this.#told(scale, first, how, or);
    }
    if ((isOpen && greatest === 100) || (seen.shares && greatest < mostOpen))
      this.table.noteColumn(
        first,
        `The velocities in ${columnName(first)} end at ${greatest} and are kept as they are, so ${greatest === 126 ? 'velocity 127 stays' : `${greatest + 1} to 127 stay`} silent. If they count to ${greatest}, say so in the heading, as in "Velocity (0..${greatest})".`,
      );
    return midi;
  }

  /** All ends of layers. */
  #look(): VelocityEnds {
    const { cells, data } = this.table;
    const [lows, highs] = [new Set<number>(), new Set<number>()];
    const digits = { low: new Uint8Array(1000), high: new Uint8Array(1000) };
    let beyond = 0;
    let inPercent = false;
    for (const column of this.#columns) {
      const [isLow, isHigh] = [column.meaning !== 'hivel', column.meaning !== 'lovel'];
      for (const row of data) {
        const cell = this.table.cellOf(row, column);
        if (cell < 0) continue;
        const number = cells.digits(cell, 3);
        if (number >= 0) {
          if (number > midi) beyond++;
          if (isLow) digits.low[number] = 1;
          if (isHigh) digits.high[number] = 1;
          continue;
        }
        const reading = this.#readings.of(cell);
        if (reading?.unit === 'percent') inPercent = true;
        if (reading?.low !== undefined && isLow) lows.add(reading.low);
        if (reading?.high !== undefined && isHigh) highs.add(reading.high);
      }
    }
    for (let number = 0; number < digits.low.length; number++) {
      if (digits.low[number] === 1) lows.add(number);
      if (digits.high[number] === 1) highs.add(number);
    }
    // One velocity that is too great is a slip; it says nothing of the scale.
    const ends = [...lows, ...highs];
    const all = numbersOf(beyond > 1 ? ends : ends.filter((end) => end <= midi));
    const inner = [...highs].filter((high) => high > 0 && high < all.greatest);
    const shared = inner.filter((high) => lows.has(high)).length;
    const next = inner.filter((high) => lows.has(high + 1)).length;
    this.#isTouching = shared > next && shared * 10 >= inner.length * 8;
    const within = (some: ReadonlySet<number>) =>
      beyond > 1 ? some : new Set([...some].filter((end) => end <= midi));
    const shares = velocityShares(within(lows), within(highs));
    return { all, areLayered: shared + next > 0, inPercent, shares };
  }

  #told(scale: number, column: ColumnReading, how: string, or = ''): number {
    if (scale === midi) return midi;
    this.table.noteColumn(
      column,
      `The velocities in ${columnName(column)} ${how}. Each is written as the nearest of 0 to 127.${or}`,
      'approximated',
    );
    return this.#stepped(scale);
  }

  /** Layers of whole numbers that follow one another meet when they are scaled. */
  #stepped(scale: number): number {
    this.#isStepped = scale > 1 && scale !== midi;
    return scale;
  }
}

/** Whether the ends in a heading are those of a scale that all velocities lie within: from 0 or 1 to any number. */
function isCounted({ low, high }: { low: number; high: number }, greatest: number): boolean {
  return (low === 0 || low === 1) && high > 1 && high <= mostChosen && greatest <= high;
}

/** Whether two ends are those of a scale of velocities: from 0 or 1 to one of its greatest numbers. */
function isScale({ low, high }: { low: number; high: number }): boolean {
  return (low === 0 || low === 1) && (scales.includes(high) || high === 10 || high === 99 || high === 256);
}
