import { decimal } from '../../trade/decimal';
import type { TableCells } from '../cells/cells';

/**
 * What a table can give for a zone, by the names of the open SFZ format. Values that come from one cell stand in this
 * order.
 */
export const valueNames = [
  'sample',
  'key',
  'lokey',
  'hikey',
  'pitch_keycenter',
  'lovel',
  'hivel',
  'transpose',
  'tune',
  'volume',
  'pan',
  'loop_mode',
  'loop_start',
  'loop_end',
  'loop_type',
  'offset',
  'end',
  'seq_position',
  'seq_length',
  'trigger',
  'group',
  'off_by',
  'sw_lokey',
  'sw_hikey',
  'sw_last',
  'sw_default',
  'lorand',
  'hirand',
  'xfin_lovel',
  'xfin_hivel',
  'xfout_lovel',
  'xfout_hivel',
  'ampeg_delay',
  'ampeg_attack',
  'ampeg_hold',
  'ampeg_decay',
  'ampeg_sustain',
  'ampeg_release',
] as const;

export type ValueName = (typeof valueNames)[number];

/** Names whose values are no numbers. */
export const wordNames: ReadonlySet<ValueName> = new Set(['sample', 'loop_mode', 'loop_type', 'trigger']);

/** Values that are words; a {@link ValueColumn} holds their position here. */
export const valueWords = [
  'no_loop',
  'one_shot',
  'loop_continuous',
  'loop_sustain',
  'alternate',
  'backward',
  'release',
  'first',
  'legato',
] as const;

export type ValueWord = (typeof valueWords)[number];

/** A value of a {@link ValueColumn} as the open SFZ format writes it. */
export function zoneValueText(name: ValueName, number: number): string {
  return wordNames.has(name) ? valueWords[number] : decimal(number);
}

/** The values of one name, by zone. */
export class ValueColumn {
  /** The cell that a value comes from; −1 for zones without one. */
  readonly cells: Int32Array;
  /** Numbers with at most six decimals, or positions in {@link valueWords}. */
  readonly numbers: Float64Array;

  constructor(zones: number) {
    this.cells = new Int32Array(zones).fill(-1);
    this.numbers = new Float64Array(zones);
  }

  /** Sets a value; where two cells of a row give it, the last one counts, as in SFZ. */
  set(zone: number, cell: number, number: number): void {
    if (this.cells[zone] > cell) return;
    this.cells[zone] = cell;
    this.numbers[zone] = number;
  }

  /** One more than the number of a zone; 0 where it has none. */
  oneMore(zone: number): number {
    return this.cells[zone] < 0 ? 0 : this.numbers[zone] + 1;
  }
}

/** The zones of a text, their values in flat lists by name. */
export class ZoneList {
  count = 0;
  readonly rows: Int32Array;
  /** The position of each zone's group in {@link groupNames}; 0 for none. */
  readonly groups: Int32Array;
  /** The cell that names the group of a zone; −1 for none. */
  readonly groupCells: Int32Array;
  readonly groupNames: string[] = [''];
  readonly #groupNumbers = new Map([['', 0]]);
  /** Positions among the dynamics; see `dynamics.ts`. Of zones with several of them the softest, and the loudest. */
  dynamics: ValueColumn | undefined;
  loudest: ValueColumn | undefined;
  /** Whether the dynamics are numbers of layers, from 1. */
  areLayersNumbered = false;
  /** Zones whose keys neither the table nor the text gives: they go for new regions alone. */
  readonly assumedKeys = new Set<number>();
  readonly #columns = new Map<ValueName, ValueColumn>();
  /** Sample names that differ from the text of their cells. */
  readonly #samples = new Map<number, string>();

  /** There will be no more than `most` zones. */
  constructor(
    readonly cells: TableCells,
    readonly most: number,
  ) {
    this.rows = new Int32Array(most);
    this.groups = new Int32Array(most);
    this.groupCells = new Int32Array(most);
  }

  /** The position of a group's name in {@link groupNames}. */
  groupOf(name: string): number {
    let group = this.#groupNumbers.get(name);
    if (group === undefined) {
      group = this.groupNames.push(name) - 1;
      this.#groupNumbers.set(name, group);
    }
    return group;
  }

  /** Takes all zones out of their groups; the cells that name these stay known. */
  clearGroups(): void {
    this.groups.fill(0);
    this.groupNames.length = 1;
    this.#groupNumbers.clear();
    this.#groupNumbers.set('', 0);
  }

  /** Adds a zone whose sample stands in a cell; answers its number. */
  add(row: number, sampleCell: number): number {
    const zone = this.count++;
    this.rows[zone] = row;
    this.groupCells[zone] = -1;
    this.column('sample').set(zone, sampleCell, Number.NaN);
    return zone;
  }

  /** The values of a name, if any zone may have one. */
  values(name: ValueName): ValueColumn | undefined {
    return this.#columns.get(name);
  }

  /** The values of a name, to set them. */
  column(name: ValueName): ValueColumn {
    let column = this.#columns.get(name);
    if (!column) {
      column = new ValueColumn(this.most);
      this.#columns.set(name, column);
    }
    return column;
  }

  /** All lists of values but that of samples. */
  valueLists(): ValueColumn[] {
    const lists = [...this.#columns].filter(([name]) => name !== 'sample').map(([, values]) => values);
    return [...lists, this.dynamics, this.loudest].filter((list) => list !== undefined);
  }

  /** Takes some zones out, those from number `first` on among them; the ones behind get lower numbers. */
  remove(left: ReadonlySet<number>, first: number): void {
    if (left.size === 0) return;
    const lists = [...this.valueLists(), this.column('sample')];
    let to = first;
    for (let zone = first; zone < this.count; zone++) {
      if (left.has(zone)) continue;
      for (const list of [this.rows, this.groups, this.groupCells]) list[to] = list[zone];
      for (const { cells, numbers } of lists) {
        cells[to] = cells[zone];
        numbers[to] = numbers[zone];
      }
      const sample = this.#samples.get(zone);
      if (sample === undefined) this.#samples.delete(to);
      else this.#samples.set(to, sample);
      if (this.assumedKeys.delete(zone)) this.assumedKeys.add(to);
      to++;
    }
    for (let zone = to; zone < this.count; zone++) {
      this.#samples.delete(zone);
      this.assumedKeys.delete(zone);
      for (const { cells } of lists) cells[zone] = -1;
    }
    this.count = to;
  }

  /** Whether a zone has a value of a name. */
  has(name: ValueName, zone: number): boolean {
    return (this.#columns.get(name)?.cells[zone] ?? -1) >= 0;
  }

  /** Gives a zone its dynamic, or all from that one up to the loudest. */
  setDynamic(zone: number, cell: number, dynamic: number, loudest = dynamic): void {
    this.dynamics ??= new ValueColumn(this.most);
    this.dynamics.set(zone, cell, dynamic);
    if (loudest === dynamic) return;
    this.loudest ??= new ValueColumn(this.most);
    this.loudest.set(zone, cell, loudest);
  }

  /** The loudest dynamic of a zone that has dynamics. */
  loudestOf(zone: number): number {
    const loudest = this.loudest && this.loudest.cells[zone] >= 0 ? this.loudest : this.dynamics;
    return loudest?.numbers[zone] ?? Number.NaN;
  }

  /** The sample of a zone as it is written. */
  sample(zone: number): string {
    return this.#samples.get(zone) ?? this.cells.value(this.column('sample').cells[zone]);
  }

  /** The different samples of all zones, as paths with `/`. */
  samplePaths(): Set<string> {
    const paths = new Set<string>();
    for (let zone = 0; zone < this.count; zone++) paths.add(this.sample(zone).replaceAll('\\', '/'));
    return paths;
  }

  /** The stretch of the text of a zone's row. */
  rowSpan(zone: number): { start: number; end: number } {
    return this.cells.rowSpan(this.rows[zone]);
  }

  /** Writes another sample than the text of its cell. */
  setSample(zone: number, text: string): void {
    this.#samples.set(zone, text);
  }

  /** The sample of a zone where it differs from the text of its cell. */
  otherSample(zone: number): string | undefined {
    return this.#samples.size === 0 ? undefined : this.#samples.get(zone);
  }
}
