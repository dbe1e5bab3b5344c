import { keyMeanings } from '../../trade/meaning';
import type { TableCells } from '../cells/cells';
import { namesAudioFile } from '../cells/namesAudioFile';
import type { TableRows } from '../cells/tableRows';
import type { ColumnReading } from '../columns/columnReading';

/** Columns that say nothing of how a zone plays. */
const silent: ReadonlySet<string> = new Set([
  'sample',
  'group',
  'comment',
  'row_number',
  'unknown',
  'enabled',
  'disabled',
]);

/**
 * Finds rows that name a sample and nothing else in a table that gives keys to all others: files that are not mapped yet. A row right
 * below another of its section takes that one's keys, unless all others give more than keys.
 */
export class KeylessRows {
  readonly #keys: readonly ColumnReading[];
  readonly #values: readonly ColumnReading[];
  readonly #sections: ReadonlyMap<number, number>;
  readonly #areAllValued: boolean;
  /** The column of samples, where all rows with keys name audio files in it; else −1. */
  readonly #files: number;
  /** The last row with keys. */
  #last = -1;

  constructor(
    readonly cells: TableCells,
    { data, sections }: TableRows,
    columns: readonly ColumnReading[],
  ) {
    this.#keys = columns.filter(
      ({ meaning, side }) => keyMeanings.includes(meaning) || meaning === 'key_count' || side?.kind === 'key',
    );
    this.#values = columns.filter((one) => !this.#keys.includes(one) && !silent.has(one.meaning));
    this.#sections = sections;
    const keyed = data.filter((row) => this.#holds(row, this.#keys));
    const sample = columns.find(({ meaning, side }) => meaning === 'sample' && !side)?.index ?? -1;
    const areFiles = keyed.length > 1 && keyed.every((row) => namesAudioFile(cells, cells.cell(row, sample)));
    this.#files = areFiles ? sample : -1;
    this.#areAllValued = keyed.length > 1 && keyed.every((row) => this.#holds(row, this.#values));
  }

  /** Whether a row gives no keys and is left out; to be asked of all rows in their order. */
  isLeftOut(row: number): boolean {
    if (this.#keys.length === 0) return false;
    if (this.#holds(row, this.#keys)) {
      this.#last = row;
      return false;
    }
    if (this.#holds(row, this.#values)) return false;
    const isApart = this.#last < 0 || this.#sections.get(row) !== this.#sections.get(this.#last);
    return isApart || this.#areAllValued;
  }

  /** Whether a row is text among zones: it gives no keys and names no audio file, as all others do. */
  isText(row: number): boolean {
    if (this.#files < 0 || this.#holds(row, this.#keys)) return false;
    return (
      !this.cells.isEmpty(row, this.#files) && !namesAudioFile(this.cells, this.cells.cell(row, this.#files))
    );
  }

  #holds(row: number, columns: readonly ColumnReading[]): boolean {
    return columns.some(({ index }) => !this.cells.isEmpty(row, index));
  }
}
