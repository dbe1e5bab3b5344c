import type { Instrument } from '../model/instrument';
import { parametersInForce } from './inForce';

/**
 * The parameters of a few names that are in force in all headers, found in one pass: for checks that ask about every
 * region at each keystroke. Not for names that a `key` stands for as well.
 */
export class FewInForce<Name extends string> {
  readonly #rows: Int32Array | undefined;
  readonly #width: number;
  readonly #slots: Record<Name, number>;

  constructor(instrument: Instrument, names: readonly Name[]) {
    const { names: table } = instrument;
    const numbers = names.map((name) => table.canonical(table.idOf(name)));
    this.#rows = parametersInForce(instrument, numbers);
    this.#width = names.length;
    this.#slots = Object.fromEntries(names.map((name, slot) => [name, slot])) as Record<Name, number>;
  }

  /** The parameter of a name in force in a header, or −1. */
  of(header: number, name: Name): number {
    return this.#rows ? (this.#rows[header * this.#width + this.#slots[name]] as number) : -1;
  }
}
