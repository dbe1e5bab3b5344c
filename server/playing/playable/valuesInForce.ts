import { inForceByHeader } from '../../model/inForce/inForceByHeader';
import type { Instrument } from '../../model/instrument';
import { parameterStride } from '../../model/instrumentParts';

/**
 * The values in force in all regions, name by name: one pass over the text's parameters chains those of one name, so
 * that a name costs a walk over the headers only where the instrument uses it.
 */
export class ValuesInForce {
  readonly instrument: Instrument;
  /** By canonical name: the last parameter of it, or −1; by parameter: the one of the same name before it. */
  readonly #last: Int32Array;
  readonly #before: Int32Array;

  constructor(instrument: Instrument) {
    this.instrument = instrument;
    const { names, parameters } = instrument;
    this.#last = new Int32Array(names.size).fill(-1);
    this.#before = new Int32Array(parameters.count);
    for (let parameter = 0; parameter < parameters.count; parameter++) {
      const name = names.canonical(parameters.cells[parameter * parameterStride]);
      this.#before[parameter] = this.#last[name];
      this.#last[name] = parameter;
    }
  }

  /** The canonical names that the instrument uses. */
  *namesUsed(): Iterable<number> {
    for (let name = 0; name < this.#last.length; name++) if (this.#last[name] >= 0) yield name;
  }

  /** All parameters of a canonical name, the last of the text first. */
  *parametersNamed(name: number): Iterable<number> {
    for (let at = this.#last[name] ?? -1; at >= 0; at = this.#before[at]) yield at;
  }

  /** The parameter in force in each region by position, or −1; `undefined` where the instrument does not use the name. */
  parameters(name: number): Int32Array | undefined {
    const { instrument } = this;
    const ofHeader = inForceByHeader(instrument, { last: this.#last, before: this.#before }, name);
    if (!ofHeader) return undefined;
    const { regions } = instrument;
    const ofRegion = new Int32Array(regions.length);
    for (let at = 0; at < regions.length; at++) ofRegion[at] = ofHeader[regions[at]];
    return ofRegion;
  }

  /** The parameter in force in each region by the name's text. */
  parametersOf(name: string): Int32Array | undefined {
    const { names } = this.instrument;
    return this.parameters(names.canonical(names.idOf(name)));
  }

  /** Fills a column with the numbers in force; regions without one, or with a value that is none, get `without`. */
  numbers<T extends Float64Array | Int32Array | Int16Array | Uint16Array>(
    name: string,
    column: T,
    without: number,
  ): T {
    column.fill(without);
    const parameters = this.parametersOf(name);
    if (!parameters) return column;
    for (let at = 0; at < parameters.length; at++) {
      const parameter = parameters[at];
      const value = parameter < 0 ? Number.NaN : this.instrument.number(parameter);
      if (!Number.isNaN(value)) column[at] = value;
    }
    return column;
  }

  /** Fills a column with the keys in force, note and octave offset and `offsetOf` added; −1 where there is none. */
  keys(name: string, column: Int16Array, offsetOf: (region: number) => number): Int16Array {
    column.fill(-1);
    const parameters = this.parametersOf(name);
    if (!parameters) return column;
    for (let at = 0; at < parameters.length; at++) {
      const parameter = parameters[at];
      const key = parameter < 0 ? Number.NaN : this.instrument.keyNumber(parameter);
      if (!(key >= 0 && key <= 127)) continue;
      const offset = offsetOf(this.instrument.regions[at]);
      column[at] = Math.max(0, Math.min(127, Math.trunc(key) + offset));
    }
    return column;
  }

  /** Fills a column with the position of the words in force among some; `without` for none and for other words. */
  words(name: string, words: readonly string[], column: Uint8Array, without: number): Uint8Array {
    column.fill(without);
    const parameters = this.parametersOf(name);
    if (!parameters) return column;
    let last = -1;
    let lastWord = without;
    for (let at = 0; at < parameters.length; at++) {
      const parameter = parameters[at];
      if (parameter < 0) continue;
      if (parameter !== last) {
        last = parameter;
        const found = words.indexOf(this.instrument.valueText(parameter).trim().toLowerCase());
        lastWord = found < 0 ? without : found;
      }
      column[at] = lastWord;
    }
    return column;
  }
}
