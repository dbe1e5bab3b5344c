import { boundsOf } from '../model/opcodes/values';
import type { ParameterNames } from '../model/parameterNames';

/** How a value is checked, as a byte for each name. */
export const ValueCheck = { none: 0, number: 1, whole: 2, option: 3 } as const;

/** What stands out about how a name is written. */
export const Spelling = { plain: 0, unknown: 1, other: 2 } as const;

/**
 * What the opcode catalogue says of each name, in flat buffers by the number of the name, so that a check of 100,000
 * parameters compares numbers alone. One table serves all instruments that share the names.
 */
export class ParameterFacts {
  /** {@link ValueCheck} of each name. */
  check = new Uint8Array(1024);
  least = new Float64Array(1024);
  greatest = new Float64Array(1024);
  /** Bits `1 << HeaderKind`; all bits for names outside the catalogue. */
  headers = new Uint16Array(1024);
  /** {@link Spelling} of each name. */
  spelling = new Uint8Array(1024);
  readonly #names: ParameterNames;
  #known = 0;

  constructor(names: ParameterNames) {
    this.#names = names;
  }

  /** Takes in the names that were added since the last call. */
  update(): void {
    const { size } = this.#names;
    if (size > this.check.length) this.#grow(Math.max(size, this.check.length * 2));
    for (; this.#known < size; this.#known++) this.#fill(this.#known);
  }

  #fill(name: number): void {
    const opcode = this.#names.opcode(name);
    if (!opcode) {
      this.spelling[name] = Spelling.unknown;
      this.headers[name] = 0xffff;
      return;
    }
    const { facts, spelling } = opcode;
    const text = this.#names.text(name);
    const { min, max } = boundsOf(facts);
    this.least[name] = min ?? Number.NEGATIVE_INFINITY;
    this.greatest[name] = max ?? Number.POSITIVE_INFINITY;
    this.headers[name] = facts.headers;
    this.spelling[name] =
      spelling === 'alias' || text !== text.toLowerCase() ? Spelling.other : Spelling.plain;
    this.check[name] =
      facts.kind === 'number'
        ? ValueCheck.number
        : facts.kind === 'whole' || facts.kind === 'key'
          ? ValueCheck.whole
          : facts.kind === 'option'
            ? ValueCheck.option
            : ValueCheck.none;
  }

  #grow(size: number): void {
    const grown = <T extends Uint8Array | Uint16Array | Float64Array>(old: T, fresh: T): T => {
      fresh.set(old);
      return fresh;
    };
    this.check = grown(this.check, new Uint8Array(size));
    this.least = grown(this.least, new Float64Array(size));
    this.greatest = grown(this.greatest, new Float64Array(size));
    this.headers = grown(this.headers, new Uint16Array(size));
    this.spelling = grown(this.spelling, new Uint8Array(size));
  }
}

const tables = new WeakMap<ParameterNames, ParameterFacts>();

/** The facts of all names in a table of names, up to date. */
export function parameterFactsOf(names: ParameterNames): ParameterFacts {
  let facts = tables.get(names);
  if (!facts) {
    facts = new ParameterFacts(names);
    tables.set(names, facts);
  }
  facts.update();
  return facts;
}
