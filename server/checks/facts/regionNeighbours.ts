import type { Instrument } from '../../model/instrument';
import type { ConditionSet } from '../../model/overlaps/conditionSets';
import type { Conditions } from '../../model/overlaps/conditions';
import type { Rectangle } from '../../model/overlaps/rectangles';
import { rectangleCode } from '../../model/overlaps/rectangles';

/** Comparisons of regions that one rule makes at the most in a check; text made of faults alone is not worth more. */
const mostComparisons = 2_000_000;

/** The keys and velocities that a rectangle code stands for; see `rectangleCode`. */
export function rectangleOfCode(code: number): Rectangle {
  return {
    lowKey: code >> 21,
    highKey: (code >> 14) & 127,
    lowVelocity: (code >> 7) & 127,
    highVelocity: code & 127,
  };
}

const situationTexts = new WeakMap<ConditionSet, string>();

/** The same text for condition sets with the same switches, triggers and gates. */
export function situationText(set: ConditionSet): string {
  let text = situationTexts.get(set);
  if (text === undefined) {
    text = JSON.stringify([[...set.switches].sort(([a], [b]) => (a < b ? -1 : 1)), set.gates]);
    situationTexts.set(set, text);
  }
  return text;
}

/** Regions by the keys that they answer, to find those that can sound where another one does. */
export class RegionNeighbours {
  readonly #instrument: Instrument;
  readonly #conditions: Conditions;
  readonly #byKey: number[][] = Array.from({ length: 128 }, () => []);
  #left = mostComparisons;

  constructor(instrument: Instrument, conditions: Conditions) {
    this.#instrument = instrument;
    this.#conditions = conditions;
    for (const region of instrument.regions) {
      const code = rectangleCode(instrument, region);
      if (code < 0) continue;
      const { lowKey, highKey } = rectangleOfCode(code);
      for (let key = lowKey; key <= highKey; key++) this.#byKey[key]?.push(region);
    }
  }

  /** Whether there was too much to compare, so that answers are not to be relied on any more. */
  get isExhausted(): boolean {
    return this.#left <= 0;
  }

  /**
   * The condition sets of regions that can sound on some of the keys and velocities of a rectangle while the switches,
   * triggers and gates of `set` hold. A set can be given more than once.
   */
  *setsMeeting(code: number, set: ConditionSet): Iterable<ConditionSet> {
    const { lowKey, highKey, lowVelocity, highVelocity } = rectangleOfCode(code);
    for (let key = lowKey; key <= highKey; key++) {
      for (const region of this.#byKey[key] ?? []) {
        if (--this.#left <= 0) return;
        const low = this.#instrument.lowVelocity[region];
        const high = this.#instrument.highVelocity[region];
        if (high < lowVelocity || low > highVelocity) continue;
        const other = this.#conditions.set(this.#conditions.ofHeader[region]);
        if (situationsMeet(set, other)) yield other;
      }
    }
  }
}

/** Whether the switches, triggers and gates of two condition sets can hold at one time. */
function situationsMeet(a: ConditionSet, b: ConditionSet): boolean {
  for (const [name, value] of a.switches) {
    const other = b.switches.get(name);
    if (other === undefined || other === value) continue;
    // A region that every attack triggers sounds on first and legato notes too.
    if (name === 'trigger' && !a.onRelease && !b.onRelease && (value === 'attack' || other === 'attack'))
      continue;
    return false;
  }
  return a.gates.every((gate) => {
    const other = b.gates.find(({ subject }) => subject === gate.subject);
    return !other || (other.low <= gate.high && other.high >= gate.low);
  });
}
