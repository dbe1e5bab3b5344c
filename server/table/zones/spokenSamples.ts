import type { TableCells } from '../cells/cells';

const longest = 2000;
const edges = /^[\s"'“”‘’«»„<([{]+|[\s"'“”‘’«»„>)\]},;:.!?]+$/gu;

/** Finds the samples of a table that a line of text speaks of, as one that puts a row right does. */
export class SpokenSamples {
  #samples: ReadonlySet<string> | undefined;

  constructor(
    readonly cells: TableCells,
    readonly data: readonly number[],
    readonly column: number,
  ) {}

  /** The first name of an audio file in a row of text that is the sample of a row of the table. */
  in(row: number): string | undefined {
    const { cells } = this;
    // A line about the one recording of all rows is about none of them.
    const names = this.#names();
    if (this.data.length > 1 && names.size - (names.has('') ? 1 : 0) === 1) return undefined;
    const { start, end } = cells.rowSpan(row);
    const words = cells.text.slice(start, Math.min(end, start + longest)).split(/\s+/u);
    return words
      .map((word) => word.replace(edges, ''))
      .find((word) => /\.\p{L}/u.test(word) && names.has(word.toLowerCase()));
  }

  #names(): ReadonlySet<string> {
    const { cells, data, column } = this;
    this.#samples ??= new Set(data.map((row) => cells.value(cells.cell(row, column)).toLowerCase()));
    return this.#samples;
  }
}
