import type { ColumnMeaning } from '../../trade/meaning';
import type { KeyRangeReading } from '../../trade/readings/keyReading';
import { readKeyRange } from '../../trade/readings/keyReading';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

const rangeMeanings = ['key', 'lokey', 'hikey', 'key_range'] as const;
const velocityMeanings = ['velocity_range', 'lovel', 'hivel', 'dynamics'] as const;

/**
 * The rows that give the keys, the root, the velocities and the key switches of zones: where these stand once for several zones,
 * as in merged cells, the last row above that has any.
 */
export class MergedRows {
  keyRows: Int32Array;
  rootRows: Int32Array;
  velocityRows: Int32Array;
  switchRows: Int32Array;
  readonly #ranges: readonly ColumnReading[];
  readonly #root: ColumnReading | undefined;
  readonly #velocities: readonly ColumnReading[];
  readonly #switches: readonly ColumnReading[];
  #keys: CellReadings<KeyRangeReading | undefined> | undefined;

  constructor(readonly table: ZoneCells) {
    const { rows } = table.zones;
    this.keyRows = rows;
    this.rootRows = rows;
    this.velocityRows = rows;
    this.switchRows = rows;
    const columns = (meanings: readonly ColumnMeaning[]) =>
      meanings.flatMap((meaning) => table.column(meaning) ?? []);
    this.#ranges = columns(rangeMeanings);
    this.#root = table.column('pitch_keycenter');
    this.#velocities = columns(velocityMeanings).filter(({ side }) => side === undefined);
    this.#switches = columns(['keyswitch']);
  }

  /** Finds the rows for all zones of the table, and notes where they are others. */
  find(): void {
    if (this.#ranges.length === 0) return;
    const { table } = this;
    const { areRecords } = table.cells;
    if (!areRecords && this.#switches.length > 0) this.#findSwitches();
    const isFilled =
      !areRecords &&
      this.#velocities.length > 0 &&
      (this.#areMergedFirst() ||
        this.#areMergedWithGroups(this.#velocities) ||
        this.#areMergedByKeys(this.#velocities));
    const { rows } = table.zones;
    let last = -1;
    let lastVelocity = -1;
    for (let zone = table.first; zone < table.end; zone++) {
      const row = rows[zone];
      const hasVelocity = this.#holds(row, this.#velocities);
      const carriesKeys =
        !areRecords && last >= 0 && !this.#holds(row, this.#ranges) && this.#fits(row, last);
      if (carriesKeys) this.#carryKeys(zone, row, last);
      else last = this.#holds(row, this.#ranges) ? row : -1;
      if (last < 0)
        this.#note(row, 'gives no low and high keys, so its region plays on the whole keyboard', 'no keys');
      if (hasVelocity) lastVelocity = row;
      else if (lastVelocity >= 0 && (carriesKeys || isFilled)) this.#carryVelocities(zone, row, lastVelocity);
      else if (!carriesKeys) {
        if (lastVelocity >= 0)
          this.#note(row, 'gives no velocities, so its region plays at all of them', 'no velocities');
        lastVelocity = -1;
      }
    }
  }

  #holds(row: number, columns: readonly ColumnReading[]): boolean {
    return columns.some((column) => this.table.cellOf(row, column) >= 0);
  }

  /** Whether a row without keys goes with those of another: it has no root of its own, or one within them. */
  #fits(row: number, above: number): boolean {
    const { table } = this;
    const root = table.cellOf(row, this.#root);
    if (root < 0) return true;
    this.#keys ??= new CellReadings(table.cells, (text) => readKeyRange(text, table.options.naming));
    const readings = this.#keys;
    const own = readings.of(root)?.low;
    const at = (meaning: ColumnMeaning, end: 'low' | 'high') => {
      const cell = table.cellOf(above, table.column(meaning));
      return cell < 0 ? undefined : readings.of(cell)?.[end];
    };
    const low = at('lokey', 'low') ?? at('key_range', 'low') ?? at('key', 'low');
    const high = at('hikey', 'high') ?? at('key_range', 'high') ?? at('key', 'high') ?? low;
    if (!own || !low || !high) return false;
    const [one, from, to] = [own, low, high].map((key) => key.number ?? key.named);
    if (one === undefined || from === undefined || to === undefined) return false;
    return (own.number === undefined) !== (low.number === undefined) || (one >= from && one <= to);
  }

  /**
   * Whether velocities stand before the keys and once for several rows: only where they change, so that an empty cell does not
   * say all velocities.
   */
  #areMergedFirst(): boolean {
    const { table } = this;
    const firstKey = Math.min(...this.#ranges.map(({ index }) => index));
    if (this.#velocities.some(({ index }) => index > firstKey)) return false;
    const [column] = this.#velocities;
    let before = '';
    let empty = 0;
    for (let zone = table.first; zone < table.end; zone++) {
      const text = table.cells.value(table.cellOf(table.zones.rows[zone], column));
      if (text === '') {
        if (before === '') return false;
        empty++;
      } else if (text === before) return false;
      else before = text;
    }
    return empty > 0;
  }

  /** Key switches that stand once for a block of rows go for those below too. */
  #findSwitches(): void {
    const { table } = this;
    const [column] = this.#switches;
    const isFilled = this.#areMergedWithGroups(this.#switches) || this.#areMergedByKeys(this.#switches);
    const group = table.column('group');
    const groupOf = (row: number) => table.cells.value(table.cellOf(row, group));
    const { rows } = table.zones;
    let last = -1;
    for (let zone = table.first; zone < table.end; zone++) {
      const row = rows[zone];
      if (table.cellOf(row, column) >= 0) last = row;
      else if (last >= 0 && (isFilled || (groupOf(row) !== '' && groupOf(row) === groupOf(last)))) {
        if (this.switchRows === rows) this.switchRows = rows.slice();
        this.switchRows[zone] = last;
        this.#note(row, 'gives no key switch; that of the row above it is taken', 'key switch above');
      } else
        this.#note(row, 'gives no key switch, so its region sounds whichever is pressed', 'no key switch');
    }
  }

  /** Whether values stand in the same rows as the names of groups, and neither in others. */
  #areMergedWithGroups(given: readonly ColumnReading[]): boolean {
    const { table } = this;
    const group = table.column('group');
    if (!group) return false;
    let empty = 0;
    for (let zone = table.first; zone < table.end; zone++) {
      const row = table.zones.rows[zone];
      const isNamed = table.cellOf(row, group) >= 0;
      if (isNamed !== this.#holds(row, given) || (!isNamed && zone === table.first)) return false;
      if (!isNamed) empty++;
    }
    return empty > 0;
  }

  /**
   * Whether values stand once for several rows with other keys: each of these keys occurs under other values too, and none twice
   * under the same.
   */
  #areMergedByKeys(given: readonly ColumnReading[]): boolean {
    const { table } = this;
    const blocks = new Map<string, number[]>();
    const empty = new Set<string>();
    let block = 0;
    for (let zone = table.first; zone < table.end; zone++) {
      const row = table.zones.rows[zone];
      const isEmpty = !this.#holds(row, given);
      if (!isEmpty) block++;
      if (block === 0 || !this.#holds(row, this.#ranges)) return false;
      const keys = this.#ranges.map((column) => table.cells.value(table.cellOf(row, column))).join(' ');
      if (isEmpty) empty.add(keys);
      const own = blocks.get(keys);
      if (own?.includes(block)) return false;
      if (own) own.push(block);
      else blocks.set(keys, [block]);
    }
    return empty.size > 0 && [...empty].every((keys) => (blocks.get(keys)?.length ?? 0) > 1);
  }

  #carryKeys(zone: number, row: number, above: number): void {
    const { zones } = this.table;
    if (this.keyRows === zones.rows) this.keyRows = zones.rows.slice();
    this.keyRows[zone] = above;
    if (this.table.cellOf(row, this.#root) < 0) {
      if (this.rootRows === zones.rows) this.rootRows = zones.rows.slice();
      this.rootRows[zone] = above;
    }
    this.#note(row, 'gives no keys; those of the row above it are taken', 'keys above');
  }

  #carryVelocities(zone: number, row: number, above: number): void {
    const { zones } = this.table;
    if (this.velocityRows === zones.rows) this.velocityRows = zones.rows.slice();
    this.velocityRows[zone] = above;
    this.#note(row, 'gives no velocities; those of the row above it are taken', 'velocities above');
  }

  #note(row: number, what: string, alike: string): void {
    const { cells, notes } = this.table;
    const span = cells.rowSpan(row);
    notes.row = row;
    notes.add('assumed', span, `${notes.place(span.start)} ${what}.`, alike);
  }
}
