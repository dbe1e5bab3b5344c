import { inForceByHeader } from '../../../model/inForce/inForceByHeader';
import type { Instrument } from '../../../model/instrument';
import { parameterSurveyOf } from './parameterSurvey';

const known = new WeakMap<Instrument, (Int32Array | undefined)[]>();

/**
 * By header the parameter of a name that is in force in it, or −1; `undefined` where the instrument does not set the name.
 * Worked out once for each name: meant for checks that ask about all regions at each keystroke. The name is a canonical one by its
 * text or its number. `Instrument.effective` answers for a single header, and for names that a `key` stands for as well.
 */
export function columnInForce(instrument: Instrument, name: string | number): Int32Array | undefined {
  const { names } = instrument;
  const canonical = typeof name === 'number' ? name : names.canonical(names.idOf(name));
  let columns = known.get(instrument);
  if (!columns) {
    columns = [];
    known.set(instrument, columns);
  }
  if (!(canonical in columns))
    columns[canonical] = inForceByHeader(instrument, parameterSurveyOf(instrument), canonical);
  return columns[canonical];
}

/** The same for a few names at once. */
export class ColumnsInForce<Name extends string> {
  readonly #columns: ReadonlyMap<Name, Int32Array | undefined>;

  constructor(instrument: Instrument, names: readonly Name[]) {
    this.#columns = new Map(names.map((name) => [name, columnInForce(instrument, name)]));
  }

  /** The parameter of a name in force in a header, or −1. */
  of(header: number, name: Name): number {
    return this.#columns.get(name)?.[header] ?? -1;
  }
}
