/** A line and column, both counted from 1; columns count UTF-16 units. */
export interface LineColumn {
  line: number;
  column: number;
}

/** One file of an instrument's text. */
export class Source {
  #lineStarts: number[] | undefined;

  constructor(
    /** The path by which the file was reached, with `/`. */
    readonly path: string,
    readonly text: string,
  ) {}

  /** Where a text offset stands. CR, LF and CRLF each end a line. */
  positionAt(offset: number): LineColumn {
    const starts = this.lineStarts;
    let low = 0;
    let high = starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (starts[middle] <= offset) low = middle;
      else high = middle;
    }
    return { line: low + 1, column: offset - starts[low] + 1 };
  }

  /** The offset at which each line starts. */
  get lineStarts(): readonly number[] {
    this.#lineStarts ??= findLineStarts(this.text);
    return this.#lineStarts;
  }
}

function findLineStarts(text: string): number[] {
  const starts = [0];
  // The engine finds a character far quicker than a loop does.
  const next = (character: string, from: number) => {
    const found = text.indexOf(character, from);
    return found < 0 ? Number.POSITIVE_INFINITY : found;
  };
  let feed = next('\n', 0);
  let carriage = next('\r', 0);
  while (feed < text.length || carriage < text.length) {
    const end = carriage + 1 === feed ? feed : Math.min(carriage, feed);
    starts.push(end + 1);
    if (feed <= end) feed = next('\n', end + 1);
    if (carriage <= end) carriage = next('\r', end + 1);
  }
  return starts;
}
