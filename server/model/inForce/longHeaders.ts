/** Own parameters from which on a header gets an index. */
const fewOwn = 64;

/** Headers and parameters with what is asked of them here. */
export interface HeadersToIndex {
  firstParameter(header: number): number;
  endParameter(header: number): number;
  canonicalName(parameter: number): number;
}

/** The parameters by name of headers that have very many, so that text made of one endless header costs no more than other text. */
export class LongHeaders {
  readonly #instrument: HeadersToIndex;
  readonly #indexes = new Map<number, ReadonlyMap<number, number>>();

  constructor(instrument: HeadersToIndex) {
    this.#instrument = instrument;
  }

  /** The last own parameter of each canonical name; `undefined` for a header that is as quickly gone through. */
  indexOf(header: number): ReadonlyMap<number, number> | undefined {
    const first = this.#instrument.firstParameter(header);
    const end = this.#instrument.endParameter(header);
    if (end - first <= fewOwn) return undefined;
    const known = this.#indexes.get(header);
    if (known) return known;
    const index = new Map<number, number>();
    for (let parameter = first; parameter < end; parameter++)
      index.set(this.#instrument.canonicalName(parameter), parameter);
    this.#indexes.set(header, index);
    return index;
  }
}
