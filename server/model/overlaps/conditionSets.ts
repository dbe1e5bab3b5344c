import type { ParameterNames } from '../parameterNames';
import { fullGateRange } from './gateRanges';
import { PairNumbers } from './pairNumbers';

/** A range of a controller, channel, bend or another value outside of which a region stays silent. */
export interface GateRange {
  /** What is looked at: `cc64`, `chan`, `bend`, … */
  subject: string;
  low: number;
  high: number;
}

/** What has to hold, besides key and velocity, for a region to sound. */
export interface ConditionSet {
  /**
   * Equal for regions that the same switches, triggers, groups, outputs, crossfades and level controllers govern and
   * whose gates look at the same subjects. Regions of different layers never count as one another's rivals.
   */
  layer: number;
  /** The values of switches and triggers, by opcode name; the trigger is always among them. */
  switches: ReadonlyMap<string, number | string>;
  /** Gates in the order of their subjects; ranges that hold everything are left out. */
  gates: readonly GateRange[];
  /** Part of the random range 0..1. */
  lowRandom: number;
  highRandom: number;
  sequenceLength: number;
  sequencePosition: number;
  /** Whether the release of a key triggers the region. */
  onRelease: boolean;
}

const rangePattern = /^(lo|hi)(cc\d+|hdcc\d+|chan|prog|bend|bpm|chanaft|polyaft|timer|rand)$/;
const exactPattern =
  /^(?:trigger|group|output|sw_(?:last|lolast|hilast|down|up|previous|vel)|(?:on|start)_(?:lo|hi)(?:hd)?cc\d+|xf(?:in|out)_(?:lo|hi)(?:key|vel|(?:hd)?cc\d+)|(?:amplitude|volume)_(?:on|curve)cc\d+)$/;
const switchPattern = /^(?:trigger|sw_.+|(?:on|start)_.+)$/;

/** Values that say the same as saying nothing. */
const defaults: Readonly<Record<string, string | number>> = { trigger: 'attack', group: 0, output: 0 };

/** By the number of a name as written: 1 where it is part of a condition, 0 where not. */
class ConditionNames {
  #marks = new Uint8Array(1024);
  #known = 0;

  of(names: ParameterNames): Uint8Array {
    if (names.size > this.#marks.length) {
      const marks = new Uint8Array(Math.max(names.size, this.#marks.length * 2));
      marks.set(this.#marks);
      this.#marks = marks;
    }
    for (; this.#known < names.size; this.#known++) {
      const name = names.text(names.canonical(this.#known));
      const isCondition =
        rangePattern.test(name) || exactPattern.test(name) || /^seq_(length|position)$/.test(name);
      this.#marks[this.#known] = isCondition ? 1 : 0;
    }
    return this.#marks;
  }
}

/** Whole numbers below this one find their number without a `Map`. */
const smallNumbers = 128;

/** The set that stands for those that there is no room for. */
export const unknownConditions = 1;
/** Text made of different conditions without end is not worth more memory than this. */
const mostHeld = 500_000;
/** Values held from one instrument to the next. */
const mostKept = 50_000;

/**
 * Numbers for the different sets of conditions that headers are under, kept from one instrument to the next: nearly
 * all are the same after a keystroke. The first set has no conditions, the second is {@link unknownConditions}.
 */
export class ConditionSets {
  readonly #names: ParameterNames;
  readonly #conditionNames = new ConditionNames();
  /** The values of each set, by the number of the name. */
  readonly #nodes: ReadonlyMap<number, number>[] = [new Map(), new Map()];
  /** Values held by all sets together. */
  #held = 0;
  #mostHeld = mostHeld;
  readonly #setOfContent = new Map<string, number>([['', 0]]);
  readonly #values: (number | string)[] = [];
  readonly #valueNumbers = new Map<number | string, number>();
  /** Value numbers of {@link smallNumbers} plus one, 0 where there is none yet. */
  readonly #smallValueNumbers = new Int32Array(smallNumbers);
  /** Pairs of a name and a value. */
  readonly #terms = new PairNumbers();
  /** Pairs of a set and a term that is added to it. */
  readonly #steps = new PairNumbers();
  readonly #stepEnds: number[] = [];
  readonly #sets: (ConditionSet | undefined)[] = [];
  readonly #layers = new Map<string, number>();

  constructor(names: ParameterNames) {
    this.#names = names;
  }

  /** Whether the sets of instruments before take up more memory than what is found again in them is worth. */
  get isFull(): boolean {
    return this.#held > mostKept || this.#steps.count > mostKept || this.#values.length > mostKept;
  }

  /** Makes room for the sets of another instrument. */
  begin(): void {
    this.#mostHeld = this.#held + mostHeld;
  }

  /** By the number of a name as written: 1 where it is part of a condition, 0 where not. */
  get marks(): Uint8Array {
    return this.#conditionNames.of(this.#names);
  }

  /** The condition set of a number. */
  set(number: number): ConditionSet {
    const known = this.#sets[number];
    if (known) return known;
    const made = this.#makeSet(this.valuesOf(number));
    this.#sets[number] = made;
    return made;
  }

  /** The numbers of the values of a set, by the number of the name. */
  valuesOf(set: number): ReadonlyMap<number, number> {
    return this.#nodes[set];
  }

  /** The number that stands for a value. */
  numberOfValue(value: number | string): number {
    const isSmall =
      typeof value === 'number' && value >= 0 && value < smallNumbers && Number.isInteger(value);
    if (isSmall && this.#smallValueNumbers[value] !== 0) return this.#smallValueNumbers[value] - 1;
    let at = this.#valueNumbers.get(value);
    if (at === undefined) {
      at = this.#values.length;
      this.#values.push(value);
      this.#valueNumbers.set(value, at);
    }
    if (isSmall) this.#smallValueNumbers[value] = at + 1;
    return at;
  }

  /** The number of a set with one more value, or with another value of a name. */
  with(from: number, name: number, value: number): number {
    if (from === unknownConditions) return unknownConditions;
    const step = this.#steps.numberOf(from, this.#terms.numberOf(name, value));
    const known = this.#stepEnds[step];
    if (known !== undefined) return known;
    const values = this.valuesOf(from);
    let to = unknownConditions;
    if (values.get(name) === value) to = from;
    else if (this.#held <= this.#mostHeld) to = this.of(new Map(values).set(name, value));
    this.#stepEnds.push(to);
    return to;
  }

  /** The number of the set of some values. */
  of(values: ReadonlyMap<number, number>): number {
    const content = [...values]
      .sort((a, b) => a[0] - b[0])
      .map(([name, value]) => `${name}:${value}`)
      .join(' ');
    const known = this.#setOfContent.get(content);
    if (known !== undefined) return known;
    this.#held += values.size;
    if (this.#held > this.#mostHeld) return unknownConditions;
    const set = this.#nodes.length;
    this.#nodes.push(values);
    this.#setOfContent.set(content, set);
    return set;
  }

  #makeSet(values: ReadonlyMap<number, number>): ConditionSet {
    const layer: string[] = [];
    const ranges = new Map<string, { low: number; high: number }>();
    let sequenceLength = 1;
    let sequencePosition = 1;
    let onRelease = false;
    const switches = new Map<string, number | string>([['trigger', 'attack']]);
    for (const [nameNumber, valueNumber] of values) {
      const name = this.#names.text(nameNumber);
      const value = this.#values[valueNumber];
      const range = rangePattern.exec(name);
      if (range) {
        if (typeof value === 'number') narrow(ranges, range[2], range[1] === 'lo', value);
      } else if (name === 'seq_length' || name === 'seq_position') {
        if (typeof value !== 'number' || !(value >= 1)) continue;
        if (name === 'seq_length') sequenceLength = Math.floor(value);
        else sequencePosition = Math.floor(value);
      } else if (defaults[name] !== value) {
        layer.push(`${name}=${value}`);
        if (switchPattern.test(name)) switches.set(name, value);
        if (name === 'trigger') onRelease = value === 'release' || value === 'release_key';
      }
    }
    const random = ranges.get('rand') ?? { low: 0, high: 1 };
    ranges.delete('rand');
    const gates = [...ranges]
      .filter(([subject, { low, high }]) => {
        const full = fullGateRange(subject);
        return low > full[0] || high < full[1];
      })
      .map(([subject, { low, high }]) => ({ subject, low, high }))
      .sort((a, b) => (a.subject < b.subject ? -1 : 1));
    for (const gate of gates) layer.push(gate.subject);
    return {
      layer: this.#layerNumber(layer.sort().join(' ')),
      switches,
      gates,
      lowRandom: random.low,
      highRandom: random.high,
      sequenceLength,
      sequencePosition,
      onRelease,
    };
  }

  #layerNumber(key: string): number {
    let layer = this.#layers.get(key);
    if (layer === undefined) {
      layer = this.#layers.size;
      this.#layers.set(key, layer);
    }
    return layer;
  }
}

function narrow(
  ranges: Map<string, { low: number; high: number }>,
  subject: string,
  isLow: boolean,
  value: number,
): void {
  const full = fullGateRange(subject);
  const range = ranges.get(subject) ?? { low: full[0], high: full[1] };
  if (isLow) range.low = value;
  else range.high = value;
  ranges.set(subject, range);
}

const setsOfNames = new WeakMap<ParameterNames, ConditionSets>();

/** The condition sets of the instruments that share a table of names; a new table once the old one is full. */
export function conditionSetsOf(names: ParameterNames): ConditionSets {
  let sets = setsOfNames.get(names);
  if (!sets || sets.isFull) {
    sets = new ConditionSets(names);
    setsOfNames.set(names, sets);
  }
  return sets;
}
