import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import { InstrumentBuilder, plainNumber } from '../../model/instrumentBuilder';
import type { Steps } from '../../model/steps';
import { piecesInStep } from '../../model/steps';
import type { GroupedZones, ZoneGroup } from './groups/sharedValues';
import { inGroupOrder } from './groups/sharedValues';
import type { ValueColumn, ValueName, ZoneList } from './zoneList';
import { valueNames, wordNames, zoneValueText } from './zoneList';

/** Characters of text for a parameter and for a header, by which the builder guesses the size of its buffers. */
const perParameter = 16;
const perHeader = 64;

/** How values are written that are not written as decimal numbers. */
export interface ZoneWriting {
  names: ReadonlySet<ValueName>;
  text: (number: number) => string;
}

/** Makes the groups and zones of a table headers and parameters; each value's span is the cell it comes from. */
export function* instrumentOfZones(
  source: { path: string; text: string },
  { zones, groups }: GroupedZones,
  writing?: ZoneWriting,
): Steps<Instrument> {
  const order = inGroupOrder(groups);
  // One column after another is put into that order: going through all at once in it would read here and there.
  const columns: Arranged[] = [];
  for (const name of valueNames) {
    const column = zones.values(name);
    if (!column) continue;
    columns.push({ name, ...arranged(column, order) });
    yield 0;
  }
  return yield* new TableBuilder(source, { zones, groups }, order, columns, writing).build();
}

/** The values of one name in the order of the groups, and the number of the name. */
interface Named {
  name: ValueName;
  id: number;
  /** Whether its values are decimal numbers. */
  isNumber: boolean;
  /** How a value is written. */
  text: (number: number) => string;
  cells: Int32Array;
  numbers: Float64Array;
}

/** The values of one name in the order of the groups, and how many there are. */
type Arranged = Pick<Named, 'name' | 'cells' | 'numbers'> & { count: number };

class TableBuilder {
  readonly #builder: InstrumentBuilder;
  readonly #zones: ZoneList;
  readonly #groups: readonly ZoneGroup[];
  /** The zones in the order of the groups, which is that of the headers. */
  readonly #order: Int32Array;
  readonly #columns: Named[];
  /** The number of regions so far. */
  #count = 0;

  constructor(
    { path, text }: { path: string; text: string },
    { zones, groups }: GroupedZones,
    order: Int32Array,
    columns: readonly Arranged[],
    writing: ZoneWriting | undefined,
  ) {
    this.#zones = zones;
    this.#groups = groups;
    this.#order = order;
    const values = columns.reduce((sum, { count }) => sum + count, 0);
    const size = Math.max(order.length * perHeader, values * perParameter);
    this.#builder = new InstrumentBuilder('table', size);
    this.#builder.enterSource(path, text);
    this.#columns = columns.map(({ name, cells, numbers }) => ({
      name,
      id: this.#builder.names.idOf(name),
      isNumber: !wordNames.has(name) && !writing?.names.has(name),
      text: writing?.names.has(name) ? writing.text : (number) => zoneValueText(name, number),
      cells,
      numbers,
    }));
  }

  *build(): Steps<Instrument> {
    const { cells } = this.#zones;
    for (const { name, cell, shared, zones } of this.#groups) {
      if (name !== '') {
        this.#builder.openHeader(HeaderKind.group, cells.starts[cell], cells.ends[cell]);
        this.#add(this.#builder.names.idOf('group_label'), cell, name);
        for (const value of shared) {
          const named = this.#columns.find((one) => one.name === value);
          if (named) this.#addValue(named, this.#count);
        }
      }
      const columns = this.#columns.filter((column) => !shared.includes(column.name));
      const end = this.#count + zones.length;
      while (this.#count < end) {
        this.#addRegions(Math.min(end, this.#count + piecesInStep), columns);
        yield this.#count / this.#order.length;
      }
    }
    return this.#builder.finish();
  }

  /** Adds regions up to a place in the order. The values of a region stand in the order of its cells, so that offsets rise. */
  #addRegions(end: number, columns: readonly Named[]): void {
    const builder = this.#builder;
    const { cells, rows } = this.#zones;
    const { starts, ends } = cells;
    const first = this.#count;
    const places = new Map(columns.map((named) => [named, this.#columnOf(named, first, end)]));
    const order = [...columns].sort((a, b) => (places.get(a) ?? 0) - (places.get(b) ?? 0));
    const ranks = order.map((named) => columns.indexOf(named));
    const cellsOf = order.map((named) => named.cells);
    const numbersOf = order.map((named) => (named.isNumber ? named.numbers : undefined));
    const ids = order.map((named) => named.id);
    const foundIn = new Int32Array(order.length);
    for (let place = first; place < end; place++) {
      const row = rows[this.#order[place]];
      builder.openHeader(HeaderKind.region, cells.rowStart(row), cells.rowEnd(row));
      let isOrdered = true;
      let last = -1;
      let lastRank = -1;
      for (let at = 0; at < cellsOf.length; at++) {
        const cell = cellsOf[at][place];
        if (cell < 0) continue;
        if (cell < last || (cell === last && ranks[at] < lastRank)) isOrdered = false;
        last = cell;
        lastRank = ranks[at];
      }
      const count = isOrdered ? order.length : inCellOrder(foundIn, cellsOf, ranks, place);
      for (let at = 0; at < count; at++) {
        const column = isOrdered ? at : foundIn[at];
        const cell = cellsOf[column][place];
        if (cell < 0) continue;
        const numbers = numbersOf[column];
        if (numbers && cells.reads(cell, numbers[place])) {
          const start = starts[cell];
          builder.addParameter(ids[column], start, start, ends[cell], numbers[place]);
        } else this.#addValue(order[column], place);
      }
    }
    this.#count = end;
  }

  /** The position in their rows of the cells of a name, by the first one from `first` to `end`. */
  #columnOf({ cells: from }: Named, first: number, end: number): number {
    const { cells, rows } = this.#zones;
    for (let place = first; place < end; place++)
      if (from[place] >= 0) return from[place] - cells.rowFirst[rows[this.#order[place]]];
    return 0;
  }

  #addValue({ name, id, text, isNumber, cells, numbers }: Named, place: number): void {
    const cell = cells[place];
    const number = numbers[place];
    if (name === 'sample') this.#addSample(id, this.#order[place], cell);
    else this.#add(id, cell, text(number), isNumber ? number : Number.NaN);
  }

  #addSample(id: number, zone: number, cell: number): void {
    const { cells } = this.#zones;
    const other = this.#zones.otherSample(zone);
    const start = cells.starts[cell];
    const end = cells.ends[cell];
    const last = cells.codes[end - 1];
    // The name of a file seldom reads as a number.
    const mayBeNumber = (last >= 48 && last <= 57) || last === 46;
    if (other !== undefined || cells.isRewritten(cell) || mayBeNumber) {
      this.#add(id, cell, other ?? cells.value(cell));
    } else this.#builder.addParameter(id, start, start, end, Number.NaN);
  }

  /** Adds a value that may differ from the text of its cell. */
  #add(id: number, cell: number, value: string, number = plainNumber(value)): void {
    const { cells } = this.#zones;
    const start = cells.starts[cell];
    const end = cells.ends[cell];
    const parameter = this.#builder.addParameter(id, start, start, end, number);
    const isText = value.length === end - start && cells.text.startsWith(value, start);
    if (!isText) this.#builder.setValue(parameter, value, number);
  }
}

/** The values of a column in another order of the zones, and how many zones have one. */
function arranged(
  column: ValueColumn,
  order: Int32Array,
): Pick<Named, 'cells' | 'numbers'> & { count: number } {
  const cells = new Int32Array(order.length);
  const numbers = new Float64Array(order.length);
  const { cells: from, numbers: fromNumbers } = column;
  let count = 0;
  for (let place = 0; place < order.length; place++) {
    const zone = order[place];
    const cell = from[zone];
    cells[place] = cell;
    if (cell < 0) continue;
    numbers[place] = fromNumbers[zone];
    count++;
  }
  return { cells, numbers, count };
}

/**
 * Puts the columns that have a value at a place into the order of its cells, and of ranks within a cell; answers how
 * many these are.
 */
function inCellOrder(
  found: Int32Array,
  cellsOf: readonly Int32Array[],
  ranks: readonly number[],
  place: number,
): number {
  let count = 0;
  for (let at = 0; at < cellsOf.length; at++) {
    const cell = cellsOf[at][place];
    if (cell < 0) continue;
    let to = count++;
    for (; to > 0; to--) {
      const before = found[to - 1];
      const other = cellsOf[before][place];
      if (other < cell || (other === cell && ranks[before] < ranks[at])) break;
      found[to] = before;
    }
    found[to] = at;
  }
  return count;
}
