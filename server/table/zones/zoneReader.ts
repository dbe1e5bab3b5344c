import { keyBounds, volumeBounds } from '../../trade/bounds';
import { rounded } from '../../trade/decimal';
import { dynamicIn } from '../../trade/dynamics';
import type { KeyReading, NoteNaming } from '../../trade/keyValues';
import { keysInList, readKeyRange } from '../../trade/keyValues';
import { readLevel } from '../../trade/levelValues';
import { meansAll } from '../../trade/limits';
import type { ColumnMeaning } from '../../trade/meaning';
import { keyMeanings } from '../../trade/meaning';
import type { NumberReading } from '../../trade/numberValues';
import { readNumber, readSequence } from '../../trade/numberValues';
import { CellReadings } from '../cells/cellReadings';
import type { TableCells } from '../cells/cells';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened } from '../columns/columnReading';
import type { Steps } from '../steps';
import type { TableNotes } from '../tableNotes';
import { LoopValues } from '../values/loopValues';
import { PanValues } from '../values/panValues';
import { TuningValues } from '../values/tuningValues';
import { VelocityValues } from '../values/velocityValues';
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

/** Reads the values of zones, all but the sample and the group, one column after another. */
export class ZoneReader {
  /** The first and one past the last zone of the table. */
  readonly first: number;
  readonly end: number;
  readonly cells: TableCells;
  readonly #columns = new Map<ColumnMeaning, ColumnReading>();
  readonly #ranges: CellReadings<ReturnType<typeof readKeyRange>>;
  readonly #hasRanges: boolean;
  /** The rows that give the keys of zones. */
  #keyRows: Int32Array;

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
    this.#ranges = new CellReadings(this.cells, (text) => readKeyRange(text, options.naming));
    this.#hasRanges = keyMeanings.some((one) => one !== 'pitch_keycenter' && this.#columns.has(one));
    this.#keyRows = zones.rows;
  }

  /** The column of a meaning. */
  column(meaning: ColumnMeaning): ColumnReading | undefined {
    return this.#columns.get(meaning);
  }

  /** Reads all values; each step takes a pass or two over the zones. */
  *read(): Steps<void> {
    this.#findKeyRows();
    yield 0.1;
    for (const meaning of ['lokey', 'hikey', 'pitch_keycenter', 'key', 'key_range'] as const) {
      if (this.#columns.has(meaning)) this.#readKeys(meaning);
    }
    yield 0.3;
    new VelocityValues(this).read();
    this.#readDynamics();
    yield 0.5;
    new TuningValues(this).read();
    this.#readVolume();
    this.#readAttenuation();
    yield 0.6;
    new PanValues(this).read();
    yield 0.7;
    new LoopValues(this).read();
    yield 0.9;
    this.#readFrames('offset');
    this.#readFrames('end');
    for (const meaning of ['seq_position', 'seq_length'] as const) this.#readSequence(meaning);
    yield 1;
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

  /**
   * Finds the rows that give the keys of zones: where key ranges stand once for several zones, as in merged cells, the
   * last one that has any.
   */
  #findKeyRows(): void {
    if (!this.#hasRanges) return;
    const { cells, zones, notes } = this;
    const columns = keyMeanings.flatMap((meaning) => this.#columns.get(meaning) ?? []);
    let last = -1;
    for (let zone = this.first; zone < this.end; zone++) {
      const row = zones.rows[zone];
      if (columns.some((column) => this.cellOf(row, column) >= 0)) {
        last = row;
        if (this.#keyRows !== zones.rows) this.#keyRows[zone] = row;
        continue;
      }
      if (last < 0) continue;
      if (this.#keyRows === zones.rows) this.#keyRows = zones.rows.slice();
      this.#keyRows[zone] = last;
      const span = cells.rowSpan(row);
      const message = `${notes.place(span.start)} gives no keys; those of the row above it are taken.`;
      notes.row = row;
      notes.add('assumed', span, message, 'keys above');
    }
  }

  #readKeys(meaning: 'key' | 'lokey' | 'hikey' | 'pitch_keycenter' | 'key_range'): void {
    const { zones, cells, notes } = this;
    const column = this.#columns.get(meaning) as ColumnReading;
    const low = zones.column(meaning === 'key_range' ? 'lokey' : meaning);
    const high = meaning === 'key_range' ? zones.column('hikey') : low;
    for (let zone = this.first; zone < this.end; zone++) {
      const cell = this.cellOf(this.#keyRows[zone], column);
      if (cell < 0) continue;
      const number = cells.digits(cell, 3);
      if (number >= 0 && number <= keyBounds.most) {
        low.set(zone, cell, number);
        high.set(zone, cell, number);
        continue;
      }
      notes.row = zones.rows[zone];
      const range = this.#keysIn(cell, column);
      if (!range) continue;
      if (high === low) low.set(zone, cell, meaning === 'hikey' ? range.high : range.low);
      else {
        if (range.open !== 'low') low.set(zone, cell, range.low);
        if (range.open !== 'high') high.set(zone, cell, range.high);
      }
    }
  }

  /** The keys in a cell; anything else is noted and answered as `undefined`. */
  #keysIn(
    cell: number,
    column: ColumnReading,
  ): { low: number; high: number; open: 'low' | 'high' | undefined } | undefined {
    const { meaning } = column;
    const range = this.#ranges.of(cell);
    if (!range || (!range.single && (meaning === 'pitch_keycenter' || meaning === 'key'))) {
      const text = this.cells.plain(cell);
      if (column.meaning === 'key_range' && meansAll(text)) return undefined;
      this.drop(
        cell,
        column,
        range
          ? 'is a range where one key is expected'
          : keysInList(text).length > 1
            ? 'lists keys that do not follow one another, which a region cannot; give each of them a row'
            : 'is neither a key number nor a note name',
      );
      return undefined;
    }
    const low = this.#key(range.low);
    const high = this.#key(range.high);
    if (low >= keyBounds.least && high >= keyBounds.least && low <= keyBounds.most && high <= keyBounds.most)
      return { low, high, open: range.open };
    this.drop(cell, column, 'lies outside the keys 0..127');
    return undefined;
  }

  #key(key: KeyReading): number {
    return key.number ?? (key.named ?? Number.NaN) + this.options.keyShift;
  }

  #readDynamics(): void {
    const column = this.#columns.get('dynamics');
    if (!column) return;
    const readings = new CellReadings(this.cells, dynamicIn);
    this.each(column, (zone, cell) => {
      const dynamic = readings.of(cell);
      if (dynamic >= 0) this.zones.setDynamic(zone, cell, dynamic);
      else this.drop(cell, column, 'names no dynamics such as p, mf or ff');
    });
  }

  #readVolume(): void {
    const column = this.#columns.get('volume');
    if (!column) return;
    const levels = this.#levelsIn(column, false);
    this.each(column, levels);
  }

  #readAttenuation(): void {
    const column = this.#columns.get('attenuation');
    const volume = this.#columns.get('volume');
    if (!column) return;
    const levels = this.#levelsIn(column, true);
    this.each(column, (zone, cell) => {
      if (this.cellOf(this.zones.rows[zone], volume) >= 0) this.drop(cell, column, 'stands beside a level');
      else levels(zone, cell);
    });
  }

  #levelsIn(column: ColumnReading, attenuation: boolean): (zone: number, cell: number) => void {
    const volumes = this.zones.column('volume');
    const inDecibels = !attenuation && (column.unit === undefined || column.unit === 'dB');
    const levels = new CellReadings(this.cells, (text) => readLevel(text, column.unit, attenuation));
    return (zone, cell) => {
      const number = inDecibels ? this.cells.number(cell) : Number.NaN;
      if (number >= volumeBounds.least && number <= volumeBounds.most) {
        if (number !== 0) volumes.set(zone, cell, rounded(number));
        return;
      }
      const level = levels.of(cell);
      if ('fault' in level) this.drop(cell, column, level.fault);
      else {
        if (level.how) this.approximate(cell, column, level.how);
        if (level.decibels !== 0) volumes.set(zone, cell, rounded(level.decibels));
      }
    };
  }

  /** Frame counts; 0 is where a sample starts, and no sample ends there. */
  #readFrames(meaning: 'offset' | 'end'): void {
    const column = this.#columns.get(meaning);
    if (!column) return;
    const frames = this.zones.column(meaning);
    this.each(column, (zone, cell) => {
      const frame = this.frameIn(zone, cell, column);
      if (frame !== undefined && frame > 0) frames.set(zone, cell, frame);
    });
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

  #readSequence(meaning: 'seq_position' | 'seq_length'): void {
    const column = this.#columns.get(meaning);
    if (!column) return;
    const values = this.zones.column(meaning);
    const lengths = this.zones.column('seq_length');
    const readings = new CellReadings(this.cells, readSequence);
    this.each(column, (zone, cell) => {
      const number = this.cells.digits(cell, 3);
      const reading = number >= 0 ? undefined : readings.of(cell);
      const position = number >= 0 ? number : reading?.position;
      if (position === undefined || position < 1 || position > 100) {
        this.drop(cell, column, 'is no round robin number from 1 to 100');
        return;
      }
      values.set(zone, cell, position);
      const length = reading?.length;
      if (meaning === 'seq_position' && length !== undefined && length >= position)
        lengths.set(zone, cell, length);
    });
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
