import type { Instrument } from '../../model/instrument';
import { parametersInForce } from './inForce';

/**
 * The parameters of a few names that are in force in all headers: for checks that ask about every region at each keystroke.
 * Not for names that a `key` stands for as well.
 */
export class FewInForce<Name extends string> {
  readonly #columns: ReadonlyMap<Name, Int32Array | undefined>;

  constructor(instrument: Instrument, names: readonly Name[]) {
    this.#columns = new Map(names.map((name) => [name, columnOf(instrument, name)]));
  }

  /** The parameter of a name in force in a header, or −1. */
  of(header: number, name: Name): number {
    return this.#columns.get(name)?.[header] ?? -1;
  }
}

/** By header the parameter of a name in force in it, or −1; `undefined` where the instrument does not set the name. */
export function columnOf(instrument: Instrument, name: string): Int32Array | undefined {
  const { names } = instrument;
  return parametersInForce(instrument, names.canonical(names.idOf(name)));
}
