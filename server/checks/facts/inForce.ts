import type { Instrument } from '../../model/instrument';
import { Parameter } from '../../model/parameterNames';
import { surveyOf } from './parameterSurvey';

const known = new WeakMap<Instrument, (Int32Array | undefined)[]>();

/**
 * For every header the parameter of a canonical name that is in force in it, or −1; `undefined` where the instrument does not
 * set the name. Worked out once for each name: meant for checks that ask about all regions. `Instrument.effective` answers for a
 * single one, and for names that a `key` stands for as well.
 */
export function parametersInForce(instrument: Instrument, name: number): Int32Array | undefined {
  let columns = known.get(instrument);
  if (!columns) {
    columns = [];
    known.set(instrument, columns);
  }
  if (!(name in columns)) columns[name] = collect(instrument, name);
  return columns[name];
}

function collect(instrument: Instrument, name: number): Int32Array | undefined {
  const { last, before } = surveyOf(instrument);
  let parameter = last[name] ?? -1;
  if (parameter < 0) return undefined;
  const { count } = instrument.headers;
  const column = new Int32Array(count).fill(-1);
  let header = count - 1;
  for (; parameter >= 0; parameter = before[parameter]) {
    while (instrument.firstParameter(header) > parameter) header--;
    // Of several in one header the last one counts, which comes first here.
    if (column[header] < 0) column[header] = parameter;
  }
  for (header = 0; header < count; header++) {
    const parent = instrument.parent(header);
    if (parent >= 0 && column[header] < 0) column[header] = column[parent];
  }
  return column;
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
