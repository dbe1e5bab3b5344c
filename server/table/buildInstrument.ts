import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { InstrumentBuilder, plainNumber } from '../model/instrumentBuilder';
import { decimal } from './decimal';
import type { ZoneGroup } from './sharedValues';
import type { ValueColumn, ValueName, ZoneList } from './zoneList';
import { valueNames, valueWords } from './zoneList';

/** Characters of text for a parameter and for a header, by which the builder guesses the size of its buffers. */
const perParameter = 16;
const perHeader = 64;

/** Makes the groups and zones of a table headers and parameters; each value's span is the cell it comes from. */
export function buildInstrument(
  text: string,
  path: string,
  zones: ZoneList,
  groups: readonly ZoneGroup[],
): Instrument {
  return new TableBuilder(text, path, zones).build(groups);
}

/** The values of one name, and the number of the name. */
interface Named {
  name: ValueName;
  id: number;
  /** Whether its values are numbers; else they are words or samples. */
  isNumber: boolean;
  column: ValueColumn;
}

class TableBuilder {
  readonly #builder: InstrumentBuilder;
  readonly #zones: ZoneList;
  readonly #columns: Named[];

  constructor(text: string, path: string, zones: ZoneList) {
    this.#zones = zones;
    const columns = valueNames.flatMap((name) => {
      const column = zones.values(name);
      return column ? [{ name, column }] : [];
    });
    const size = Math.max(
      zones.count * perHeader,
      columns.reduce((sum, { column }) => sum + column.count, 0) * perParameter,
    );
    this.#builder = new InstrumentBuilder('table', size);
    this.#builder.enterSource(path, text);
    this.#columns = columns.map(({ name, column }) => ({
      name,
      id: this.#builder.names.idOf(name),
      isNumber: name !== 'sample' && name !== 'loop_mode' && name !== 'loop_type',
      column,
    }));
  }

  build(groups: readonly ZoneGroup[]): Instrument {
    const { cells } = this.#zones;
    for (const { name, cell, shared, zones } of groups) {
      if (name !== '') {
        this.#builder.openHeader(HeaderKind.group, cells.starts[cell], cells.ends[cell]);
        this.#add(this.#builder.names.idOf('group_label'), cell, name);
        for (const value of shared) {
          const named = this.#columns.find((one) => one.name === value);
          if (named) this.#addValue(named, zones[0], named.column.cells[zones[0]]);
        }
      }
      this.#addRegions(
        zones,
        this.#columns.filter((column) => !shared.includes(column.name)),
      );
    }
    return this.#builder.finish();
  }

  /** The values of a region stand in the order of its cells, so that offsets rise. */
  #addRegions(zones: Int32Array, columns: readonly Named[]): void {
    const builder = this.#builder;
    const { cells, rows } = this.#zones;
    const { starts, ends } = cells;
    const order = inOrderOf(zones[0], columns);
    const ranks = order.map((named) => columns.indexOf(named));
    const cellsOf = order.map(({ column }) => column.cells);
    const found = new Int32Array(order.length);
    const foundCells = new Int32Array(order.length);
    for (const zone of zones) {
      const span = cells.rowSpan(rows[zone]);
      builder.openHeader(HeaderKind.region, span.start, span.end);
      let count = 0;
      let last = -1;
      for (let at = 0; at < cellsOf.length; at++) {
        const cell = cellsOf[at][zone];
        if (cell < 0) continue;
        let place = count++;
        if (cell > last) last = cell;
        else {
          while (place > 0 && isBehind(foundCells[place - 1], ranks[found[place - 1]], cell, ranks[at])) {
            found[place] = found[place - 1];
            foundCells[place] = foundCells[place - 1];
            place--;
          }
        }
        found[place] = at;
        foundCells[place] = cell;
      }
      for (let at = 0; at < count; at++) {
        const named = order[found[at]];
        const cell = foundCells[at];
        const number = named.isNumber ? named.column.numbers[zone] : Number.NaN;
        if (named.isNumber && cells.reads(cell, number))
          builder.addParameter(named.id, starts[cell], starts[cell], ends[cell], number);
        else this.#addValue(named, zone, cell);
      }
    }
  }

  #addValue({ name, id, isNumber, column }: Named, zone: number, cell: number): void {
    const number = column.numbers[zone];
    if (name === 'sample') this.#addSample(id, zone, cell);
    else if (isNumber) this.#add(id, cell, decimal(number), number);
    else this.#add(id, cell, valueWords[number], Number.NaN);
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

/** Columns in the order of the cells of one zone. */
function inOrderOf(zone: number, columns: readonly Named[]): Named[] {
  return [...columns].sort((a, b) => a.column.cells[zone] - b.column.cells[zone]);
}

/** Whether a value stands behind another: in a later cell, or later in the order of names. */
function isBehind(cell: number, rank: number, otherCell: number, otherRank: number): boolean {
  return cell > otherCell || (cell === otherCell && rank > otherRank);
}
