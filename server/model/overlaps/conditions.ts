import type { Instrument } from '../instrument';
import { parameterStride } from '../instrumentParts';
import type { Steps } from '../steps';
import { finish, piecesInStep } from '../steps';
import { ownText } from '../text/ownText';
import type { ConditionSet, GateRange } from './conditionSets';
import { type ConditionSets, conditionSetsOf, unknownConditions } from './conditionSets';

/** Conditions of one header that are taken one by one, which headers with the same beginning share. */
const mostSteps = 16;

/**
 * The conditions of all headers of an instrument. Headers under the same conditions share one small number, so that
 * 100,000 regions are compared by way of the few different sets that they have.
 */
export class Conditions {
  /** The number of the condition set in force in each header. */
  readonly ofHeader: Int32Array;
  readonly #sets: ConditionSets;
  readonly #apart = new Map<number, boolean>();

  constructor(instrument: Instrument) {
    this.#sets = conditionSetsOf(instrument.names);
    this.#sets.begin();
    this.ofHeader = new Int32Array(instrument.headers.count);
  }

  /** Works the conditions out; none is known before. */
  *collect(instrument: Instrument): Steps<void> {
    const { marks } = this.#sets;
    const { count } = instrument.headers;
    for (let header = 0; header < count; header++) {
      if (header % piecesInStep === piecesInStep - 1) yield header / count;
      const parent = instrument.parent(header);
      const inherited = parent >= 0 ? this.ofHeader[parent] : 0;
      this.ofHeader[header] = this.#under(instrument, header, inherited, marks);
    }
  }

  /** The number of the set of a header inside one with the set `set`. */
  #under(instrument: Instrument, header: number, set: number, marks: Uint8Array): number {
    const { cells } = instrument.parameters;
    const end = instrument.endParameter(header);
    let steps = 0;
    let changed: Map<number, number> | undefined;
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
      const written = cells[parameter * parameterStride];
      if (marks[written] !== 1) continue;
      const name = instrument.names.canonical(written);
      const value = this.#valueOf(instrument, parameter);
      if (changed) changed.set(name, value);
      else if (steps++ < mostSteps) set = this.#sets.with(set, name, value);
      else changed = new Map(this.#sets.valuesOf(set)).set(name, value);
    }
    return changed && set !== unknownConditions ? this.#sets.of(changed) : set;
  }

  /** The number that stands for the value of a parameter. */
  #valueOf(instrument: Instrument, parameter: number): number {
    const plain = instrument.number(parameter);
    if (!Number.isNaN(plain)) return this.#sets.numberOfValue(plain);
    const key = instrument.keyNumber(parameter);
    return this.#sets.numberOfValue(
      Number.isNaN(key) ? ownText(instrument.valueText(parameter).toLowerCase()) : key,
    );
  }

  /** The condition set of a number. */
  set(number: number): ConditionSet {
    return this.#sets.set(number);
  }

  /**
   * Whether regions of two condition sets are meant never to sound at one time, or to be layers of their own: their
   * layers differ, a gate or the random range of one ends where the other's begins or earlier, or their turns in
   * a round robin never meet.
   */
  apart(first: number, second: number): boolean {
    if (first === unknownConditions || second === unknownConditions) return true;
    const low = Math.min(first, second);
    const high = Math.max(first, second);
    const key = low * 2 ** 26 + high;
    const known = this.#apart.get(key);
    if (known !== undefined) return known;
    const result = areApart(this.set(low), this.set(high));
    this.#apart.set(key, result);
    return result;
  }
}

function areApart(a: ConditionSet, b: ConditionSet): boolean {
  if (a.layer !== b.layer) return true;
  // Ranges that share one value alone are written by people who mean them to meet, not to overlap.
  if (a.highRandom <= b.lowRandom || b.highRandom <= a.lowRandom) return true;
  if (turnsNeverMeet(a, b)) return true;
  return a.gates.some((gate, at) => {
    const other = b.gates[at];
    return gate.high < other.low || other.high < gate.low || touches(gate, other);
  });
}

function touches(a: GateRange, b: GateRange): boolean {
  return (a.high === b.low && a.low < b.high) || (b.high === a.low && b.low < a.high);
}

/**
 * A region of a round robin sounds when the count of strikes leaves the remainder position − 1 by its length. Two of
 * them meet where their positions are congruent modulo the greatest common divisor of the lengths (Chinese
 * remainder theorem). A position past the length never has its turn.
 */
export function turnsNeverMeet(a: ConditionSet, b: ConditionSet): boolean {
  if (a.sequencePosition > a.sequenceLength || b.sequencePosition > b.sequenceLength) return true;
  const divisor = greatestCommonDivisor(a.sequenceLength, b.sequenceLength);
  return (a.sequencePosition - b.sequencePosition) % divisor !== 0;
}

function greatestCommonDivisor(a: number, b: number): number {
  while (b !== 0) [a, b] = [b, a % b];
  return a;
}

const conditionsOfInstrument = new WeakMap<Instrument, Conditions>();

/** The conditions of an instrument, worked out when they are first asked for. */
export function conditionsOf(instrument: Instrument): Conditions {
  return conditionsOfInstrument.get(instrument) ?? finish(conditionsInSteps(instrument));
}

/** As {@link conditionsOf}, in steps. */
export function* conditionsInSteps(instrument: Instrument): Steps<Conditions> {
  let conditions = conditionsOfInstrument.get(instrument);
  if (!conditions) {
    conditions = new Conditions(instrument);
    yield* conditions.collect(instrument);
    conditionsOfInstrument.set(instrument, conditions);
  }
  return conditions;
}
