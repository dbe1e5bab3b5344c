import { listText } from '../../../model/wording/listText';
import type { RowChoice } from '../../../trade/statements/rows/namedRows';
import type { ColumnReading } from '../../columns/columnReading';
import { shortened } from '../../columns/columnReading';
import type { ZoneList } from '../zoneList';

const mostNamed = 3;

/** Finds the zones of rows that a text names by their place, in one table. */
export class RowsSaid {
  /** The rows with zones, in their order. */
  readonly #rows: readonly number[];
  /** By number, the row that a column of numbers gives it to; `undefined` where no column numbers the rows. */
  readonly #numbered: ReadonlyMap<number, number> | undefined;

  /** The zones of the table are those from number `first` on. */
  constructor(
    readonly zones: ZoneList,
    readonly first: number,
    columns: readonly ColumnReading[],
  ) {
    const { cells, rows } = zones;
    this.#rows = [...new Set(rows.slice(first, zones.count))].sort((a, b) => a - b);
    const column = columns.find(({ meaning }) => meaning === 'row_number');
    const numbers = column
      ? this.#rows.map((row) => Number.parseInt(cells.plain(cells.cell(row, column.index)), 10))
      : [];
    const isNumbered =
      numbers.length > 0 && numbers.every((one) => one >= 0) && new Set(numbers).size === numbers.length;
    this.#numbered = isNumbered
      ? new Map(numbers.map((number, at) => [number, this.#rows[at]] as const))
      : undefined;
  }

  /** The zones of a choice; `before` are those that the sentence has named. `undefined` where the table has no such rows, or no others. */
  zonesOf(choice: RowChoice, before: readonly RowChoice[] = []): number[] | undefined {
    const rows = this.#rowsOf(choice, before);
    if (!rows || rows.size === 0 || rows.size === this.#rows.length) return undefined;
    const found: number[] = [];
    for (let zone = this.first; zone < this.zones.count; zone++)
      if (rows.has(this.zones.rows[zone])) found.push(zone);
    return found;
  }

  #rowsOf(choice: RowChoice, before: readonly RowChoice[]): ReadonlySet<number> | undefined {
    const all = this.#rows;
    switch (choice.is) {
      case 'numbers': {
        const rows = choice.numbers.map((one) => (this.#numbered ? this.#numbered.get(one) : all[one - 1]));
        return rows.includes(undefined) ? undefined : new Set(rows.filter((row) => row !== undefined));
      }
      case 'first':
        return choice.count > all.length ? undefined : new Set(all.slice(0, choice.count));
      case 'last':
        return choice.count > all.length ? undefined : new Set(all.slice(all.length - choice.count));
      case 'others':
        return this.#without([choice.than]);
      case 'rest':
        return before.length === 0 ? undefined : this.#without(before);
    }
  }

  #without(choices: readonly RowChoice[]): ReadonlySet<number> | undefined {
    const left = new Set(this.#rows);
    for (const choice of choices) {
      const rows = choice.is === 'rest' ? undefined : this.#rowsOf(choice, []);
      if (!rows) return undefined;
      for (const row of rows) left.delete(row);
    }
    return left;
  }
}

/** Some zones by their samples, for people. */
export function namesOfZones(zones: ZoneList, some: readonly number[]): string {
  const names = some.slice(0, mostNamed).map((zone) => `"${shortened(zones.sample(zone))}"`);
  const more = some.length - names.length;
  return listText(more > 0 ? [...names, `${more} more`] : names, 'and');
}
