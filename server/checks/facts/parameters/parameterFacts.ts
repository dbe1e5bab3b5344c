import { boundsOf } from '../../../model/opcodes/values';
import type { ParameterNames } from '../../../model/parameterNames';
import { Parameter } from '../../../model/parameterNames';
import { rangeNamesOf } from './rangeNames';

/**
 * What stands out about a name, as bits of one number for each name. The lower sixteen bits are `1 << HeaderKind` for
 * each header that does not take it.
 */
export const NameMark = {
  /** Not in the format. */
  unknown: 1 << 16,
  /** An older or alternative spelling, or one with capital letters. */
  otherSpelling: 1 << 17,
  /** An end of the range of keys, of velocities, of something else. */
  keyRange: 1 << 18,
  velocityRange: 1 << 19,
  otherRange: 1 << 20,
  /** How values are checked: as a number within bounds, as a whole one, as one of some words. */
  number: 1 << 21,
  whole: 1 << 22,
  option: 1 << 23,
} as const;

/**
 * What the opcode catalogue says of each name, in flat buffers by the number of the name, so that a check of 100,000
 * parameters compares numbers alone. One table serves all instruments that share the names.
 */
export class ParameterFacts {
  /** {@link NameMark} of each name. */
  marks = new Int32Array(1024);
  /** The number of the canonical name of each name. */
  canonical = new Int32Array(1024);
  least = new Float64Array(1024);
  greatest = new Float64Array(1024);
  readonly #names: ParameterNames;
  #known = 0;

  constructor(names: ParameterNames) {
    this.#names = names;
  }

  /** Takes in the names that were added since the last call. */
  update(): void {
    const { low } = rangeNamesOf(this.#names);
    const { size } = this.#names;
    if (size > this.marks.length) this.#grow(Math.max(size, this.marks.length * 2));
    for (; this.#known < size; this.#known++) {
      const name = this.#known;
      this.canonical[name] = this.#names.canonical(name);
      this.marks[name] = this.#marksOf(name) | rangeMark(low[name]);
    }
  }

  #marksOf(name: number): number {
    const opcode = this.#names.opcode(name);
    if (!opcode) return NameMark.unknown;
    const { facts, spelling } = opcode;
    const text = this.#names.text(name);
    const { min, max } = boundsOf(facts);
    this.least[name] = min ?? Number.NEGATIVE_INFINITY;
    this.greatest[name] = max ?? Number.POSITIVE_INFINITY;
    const isOther = spelling === 'alias' || text !== text.toLowerCase();
    return (~facts.headers & 0xffff) | (isOther ? NameMark.otherSpelling : 0) | valueMark(facts.kind);
  }

  #grow(size: number): void {
    const grown = <T extends Int32Array | Float64Array>(old: T, fresh: T): T => {
      fresh.set(old);
      return fresh;
    };
    this.marks = grown(this.marks, new Int32Array(size));
    this.canonical = grown(this.canonical, new Int32Array(size));
    this.least = grown(this.least, new Float64Array(size));
    this.greatest = grown(this.greatest, new Float64Array(size));
  }
}

function valueMark(kind: string): number {
  if (kind === 'number') return NameMark.number;
  if (kind === 'whole' || kind === 'key') return NameMark.whole;
  return kind === 'option' ? NameMark.option : 0;
}

function rangeMark(lowEnd: number): number {
  if (lowEnd < 0) return 0;
  if (lowEnd === Parameter.lokey) return NameMark.keyRange;
  return lowEnd === Parameter.lovel ? NameMark.velocityRange : NameMark.otherRange;
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
