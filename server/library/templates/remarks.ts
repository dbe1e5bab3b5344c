import type { Instrument } from '../../model/instrument';
import type { Directive } from '../../model/instrumentParts';
import { lineEndAt } from '../../model/text/textLayout';

/** Said in a remark at a region or group of a template that is no example. */
const staying = /\bstays here\b/i;

/** The remarks in a template's own file, found by where they stand. */
export class Remarks {
  readonly #text: string;
  /** In the order of the text. */
  readonly #all: readonly Directive[];
  readonly #byStart: ReadonlyMap<number, Directive>;
  #line = { from: 0, end: -1 };

  constructor({ directives, sources }: Instrument) {
    this.#text = sources[0].text;
    this.#all = directives
      .filter(({ kind, source }) => kind === 'comment' && source === 0)
      .sort((a, b) => a.start - b.start);
    this.#byStart = new Map(this.#all.map((one) => [one.start, one]));
  }

  /** The remark of one line that starts at a place. */
  at(start: number): Directive | undefined {
    const one = this.#byStart.get(start);
    return one && one.end > start && !/[\r\n]/.test(one.value) ? one : undefined;
  }

  /** Whether a remark right before a place, or behind it on its line, says that what stands there stays. */
  sayStays(start: number): boolean {
    const next = this.#firstFrom(start);
    const before = this.#all[next - 1];
    if (before && staying.test(before.value) && this.#isRightBefore(before.end, start)) return true;
    const lineEnd = this.#lineEnd(start);
    for (let at = next; at < this.#all.length && this.#all[at].start < lineEnd; at++)
      if (staying.test(this.#all[at].value)) return true;
    return false;
  }

  /** Where the line of a place ends; many may be asked about on one line. */
  #lineEnd(start: number): number {
    if (start < this.#line.from || start > this.#line.end)
      this.#line = { from: start, end: lineEndAt(this.#text, start) };
    return this.#line.end;
  }

  #isRightBefore(end: number, start: number): boolean {
    let at = start;
    while (at > end && /\s/.test(this.#text[at - 1])) at--;
    return at <= end;
  }

  /** The position of the first remark at a place or behind it. */
  #firstFrom(start: number): number {
    let [low, high] = [0, this.#all.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#all[middle].start < start) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}
