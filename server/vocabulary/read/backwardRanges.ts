/** The end of a range that a place gave. */
interface RangeEnd {
  parameter: number;
  number: number;
  start: number;
  end: number;
}

/** A range whose low end lies above its high end. */
export interface BackwardRange {
  /** The parameters of the two ends. */
  low: number;
  high: number;
  lowest: number;
  highest: number;
  /** Where the low end is written. */
  start: number;
  end: number;
  words: 'key' | 'velocity';
}

const partners: Readonly<Record<string, { other: string; isLow: boolean; words: 'key' | 'velocity' }>> = {
  lokey: { other: 'hikey', isLow: true, words: 'key' },
  hikey: { other: 'lokey', isLow: false, words: 'key' },
  lovel: { other: 'hivel', isLow: true, words: 'velocity' },
  hivel: { other: 'lovel', isLow: false, words: 'velocity' },
};

/** Finds ranges of one element that are written backwards, while values come in one after the other. */
export class BackwardRanges {
  #header = -1;
  readonly #ends = new Map<string, RangeEnd>();
  readonly #found = new Map<string, BackwardRange>();

  /** Takes a value of a header up. */
  add(name: string, header: number, parameter: number, number: number, start: number, end: number): void {
    const known = partners[name];
    if (!known) return;
    if (header !== this.#header) this.#ends.clear();
    this.#header = header;
    const own = { parameter, number, start, end };
    this.#ends.set(name, own);
    const other = this.#ends.get(known.other);
    if (!other) return;
    const [low, high] = known.isLow ? [own, other] : [other, own];
    const id = `${header} ${known.words}`;
    // A key of -1 switches a range off.
    if (low.number <= high.number || high.number < 0 || Number.isNaN(low.number)) this.#found.delete(id);
    else
      this.#found.set(id, {
        low: low.parameter,
        high: high.parameter,
        lowest: high.number,
        highest: low.number,
        start: low.start,
        end: low.end,
        words: known.words,
      });
  }

  backwards(): Iterable<BackwardRange> {
    return this.#found.values();
  }
}
