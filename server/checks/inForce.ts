import type { Instrument } from '../model/instrument';
import { Parameter } from '../model/parameterNames';

/**
 * For every header the parameters of some canonical names that are in force, in a row of `names.length` each: the
 * position of the parameter, or −1. `undefined` where the instrument sets none of them. Meant for few names over all
 * regions; `Instrument.effective` answers for a single one.
 */
export function parametersInForce(instrument: Instrument, names: readonly number[]): Int32Array | undefined {
  const slots = new Int8Array(instrument.names.size).fill(-1);
  for (let name = 0; name < slots.length; name++) {
    slots[name] = names.indexOf(instrument.names.canonical(name));
  }
  const { count } = instrument.headers;
  const width = names.length;
  const rows = new Int32Array(count * width).fill(-1);
  let any = false;
  for (let header = 0; header < count; header++) {
    const row = header * width;
    const parent = instrument.parent(header);
    if (any && parent >= 0) {
      for (let slot = 0; slot < width; slot++) rows[row + slot] = rows[parent * width + slot] as number;
    }
    const end = instrument.endParameter(header);
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
      const slot = slots[instrument.name(parameter)] as number;
      if (slot < 0) continue;
      rows[row + slot] = parameter;
      any = true;
    }
  }
  return any ? rows : undefined;
}

/** Own parameters from which on a header gets an index. */
const fewOwn = 64;

/**
 * Answers as `Instrument.effective` does, for checks that ask often: headers with very many parameters are indexed,
 * so that text made of one endless header costs no more than other text.
 */
export class InForce {
  readonly #instrument: Instrument;
  readonly #indexes = new Map<number, ReadonlyMap<number, number>>();

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
  }

  /** The parameter of a canonical name in force in a header, or −1; for low and high key that may be a `key`. */
  effective(header: number, name: number): number {
    const instrument = this.#instrument;
    const byKey = name === Parameter.lokey || name === Parameter.hikey || name === Parameter.pitch_keycenter;
    for (let at = header; at >= 0; at = instrument.parent(at)) {
      const first = instrument.firstParameter(at);
      const end = instrument.endParameter(at);
      if (end - first > fewOwn) {
        const index = this.#indexOf(at);
        const found = Math.max(index.get(name) ?? -1, byKey ? (index.get(Parameter.key) ?? -1) : -1);
        if (found >= 0) return found;
        continue;
      }
      for (let parameter = end - 1; parameter >= first; parameter--) {
        const canonical = instrument.canonicalName(parameter);
        if (canonical === name || (byKey && canonical === Parameter.key)) return parameter;
      }
    }
    return -1;
  }

  #indexOf(header: number): ReadonlyMap<number, number> {
    const known = this.#indexes.get(header);
    if (known) return known;
    const index = new Map<number, number>();
    const end = this.#instrument.endParameter(header);
    for (let parameter = this.#instrument.firstParameter(header); parameter < end; parameter++) {
      index.set(this.#instrument.canonicalName(parameter), parameter);
    }
    this.#indexes.set(header, index);
    return index;
  }
}
