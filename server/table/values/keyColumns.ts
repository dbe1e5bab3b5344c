import { keyBounds } from '../../trade/bounds';
import type { KeyReading } from '../../trade/keyReading';
import { keysInList, readKeyRange } from '../../trade/keyReading';
import { meansAll } from '../../trade/limits';
import { keyMeanings } from '../../trade/meaning';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

/** Reads root keys, single keys and key ranges. */
export class KeyColumns {
  readonly #ranges: CellReadings<ReturnType<typeof readKeyRange>>;
  readonly #hasRanges: boolean;
  /** The rows that give the keys of zones. */
  #keyRows: Int32Array;

  constructor(readonly table: ZoneCells) {
    const { naming } = table.options;
    this.#ranges = new CellReadings(table.cells, (text) => readKeyRange(text, naming));
    this.#hasRanges = keyMeanings.some((one) => one !== 'pitch_keycenter' && table.column(one));
    this.#keyRows = table.zones.rows;
  }

  /** Reads the keys of all zones of the table. */
  read(): void {
    this.#findKeyRows();
    for (const meaning of ['lokey', 'hikey', 'pitch_keycenter', 'key', 'key_range'] as const) {
      const column = this.table.column(meaning);
      if (column) this.#readKeys(meaning, column);
    }
  }

  /**
   * Finds the rows that give the keys of zones: where key ranges stand once for several zones, as in merged cells, the
   * last one that has any.
   */
  #findKeyRows(): void {
    if (!this.#hasRanges) return;
    const { cells, zones, notes } = this.table;
    const columns = keyMeanings.flatMap((meaning) => this.table.column(meaning) ?? []);
    let last = -1;
    for (let zone = this.table.first; zone < this.table.end; zone++) {
      const row = zones.rows[zone];
      if (columns.some((column) => this.table.cellOf(row, column) >= 0)) {
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

  #readKeys(
    meaning: 'key' | 'lokey' | 'hikey' | 'pitch_keycenter' | 'key_range',
    column: ColumnReading,
  ): void {
    const { zones, cells, notes } = this.table;
    const low = zones.column(meaning === 'key_range' ? 'lokey' : meaning);
    const high = meaning === 'key_range' ? zones.column('hikey') : low;
    for (let zone = this.table.first; zone < this.table.end; zone++) {
      const cell = this.table.cellOf(this.#keyRows[zone], column);
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
      const text = this.table.cells.plain(cell);
      if (column.meaning === 'key_range' && meansAll(text)) return undefined;
      this.table.drop(
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
    this.table.drop(cell, column, 'lies outside the keys 0..127');
    return undefined;
  }

  #key(key: KeyReading): number {
    return key.number ?? (key.named ?? Number.NaN) + this.table.options.keyShift;
  }
}
