import type { TableCells } from './cells';
import { DistinctTexts } from './distinctTexts';

/** Reads cells, each different text once. */
export class CellReadings<Reading> {
  readonly #texts: DistinctTexts;
  readonly #readings: Reading[] = [];

  /** `read` gets a text in the usual characters; see {@link TableCells.plain}. */
  constructor(
    cells: TableCells,
    readonly read: (text: string) => Reading,
  ) {
    this.#texts = new DistinctTexts(cells);
  }

  /** How many different texts were read. */
  get count(): number {
    return this.#texts.count;
  }

  of(cell: number): Reading {
    const number = this.#texts.numberOf(cell);
    if (number === this.#readings.length) this.#readings.push(this.read(this.#texts.cells.plain(cell)));
    return this.#readings[number];
  }
}
