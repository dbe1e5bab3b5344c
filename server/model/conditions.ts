import type { Instrument } from './instrument';
import { parameterStride } from './instrument';
import { PairNumbers } from './pairNumbers';
import type { ParameterNames } from './parameterNames';

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

/** Documented full ranges of what gates look at (public documentation of the open SFZ format). */
const fullRanges: Readonly<Record<string, readonly [low: number, high: number]>> = {
  chan: [1, 16],
  prog: [0, 127],
  bend: [-8192, 8192],
  bpm: [0, 500],
  chanaft: [0, 127],
  polyaft: [0, 127],
  cc: [0, 127],
  hdcc: [0, 1],
};

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

const conditionNames = new WeakMap<ParameterNames, ConditionNames>();

/** Parameters of conditions with their values, shared by all headers where the same ones are in force. */
interface Node {
  values: ReadonlyMap<number, number>;
}

/** Whole numbers below this one find their number without a `Map`. */
const smallNumbers = 128;

const unknownConditions = 1;
/** Conditions of one header that are taken one by one, which headers with the same beginning share. */
const mostSteps = 16;
/** Text made of different conditions without end is not worth more memory than this. */
const mostHeld = 500_000;

/**
 * The conditions of all headers of an instrument. Headers under the same conditions share one small number, so that
 * 100,000 regions are compared by way of the few different sets that they have.
 */
export class Conditions {
  /** The number of the condition set in force in each header. */
  readonly ofHeader: Int32Array;
  readonly #names: ParameterNames;
  /** The first node has no conditions, the second stands for those that there is no room for. */
  readonly #nodes: Node[] = [{ values: new Map() }, { values: new Map() }];
  /** Values held by all nodes together. */
  #held = 0;
  readonly #nodeOfContent = new Map<string, number>([['', 0]]);
  readonly #values: (number | string)[] = [];
  readonly #valueNumbers = new Map<number | string, number>();
  /** Value numbers of {@link smallNumbers} plus one, 0 where there is none yet. */
  readonly #smallValueNumbers = new Int32Array(smallNumbers);
  /** Pairs of a name and a value. */
  readonly #terms = new PairNumbers();
  /** Pairs of a node and a term that is added to it. */
  readonly #steps = new PairNumbers();
  readonly #stepEnds: number[] = [];
  readonly #sets: (ConditionSet | undefined)[] = [];
  readonly #layers = new Map<string, number>();
  readonly #apart = new Map<number, boolean>();

  constructor(instrument: Instrument) {
    this.#names = instrument.names;
    let names = conditionNames.get(instrument.names);
    if (!names) {
      names = new ConditionNames();
      conditionNames.set(instrument.names, names);
    }
    const marks = names.of(instrument.names);
    const { count } = instrument.headers;
    this.ofHeader = new Int32Array(count);
    for (let header = 0; header < count; header++) {
      const parent = instrument.parent(header);
      this.ofHeader[header] = this.#under(
        instrument,
        header,
        parent >= 0 ? (this.ofHeader[parent] as number) : 0,
        marks,
      );
    }
  }

  /** The node of a header inside one with the node `node`. */
  #under(instrument: Instrument, header: number, node: number, marks: Uint8Array): number {
    const { cells } = instrument.parameters;
    const end = instrument.endParameter(header);
    let steps = 0;
    let changed: Map<number, number> | undefined;
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
      const written = cells[parameter * parameterStride] as number;
      if (marks[written] !== 1) continue;
      const name = this.#names.canonical(written);
      const value = this.#valueOf(instrument, parameter);
      if (changed) changed.set(name, value);
      else if (steps++ < mostSteps) node = this.#step(node, name, value);
      else changed = new Map(this.#nodes[node]?.values).set(name, value);
    }
    return changed && node !== unknownConditions ? this.#nodeOf(changed) : node;
  }

  /** The condition set of a number. */
  set(number: number): ConditionSet {
    const known = this.#sets[number];
    if (known) return known;
    const made = this.#makeSet(this.#nodes[number] as Node);
    this.#sets[number] = made;
    return made;
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

  #valueOf(instrument: Instrument, parameter: number): number {
    const plain = instrument.number(parameter);
    const small = plain >= 0 && plain < smallNumbers && Number.isInteger(plain);
    if (!small) return this.#numberOfValue(instrument, parameter);
    let at = this.#smallValueNumbers[plain] as number;
    if (at === 0) {
      at = this.#numberOfValue(instrument, parameter) + 1;
      this.#smallValueNumbers[plain] = at;
    }
    return at - 1;
  }

  #numberOfValue(instrument: Instrument, parameter: number): number {
    const number = instrument.keyNumber(parameter);
    const value = Number.isNaN(number) ? instrument.valueText(parameter).toLowerCase() : number;
    let at = this.#valueNumbers.get(value);
    if (at === undefined) {
      at = this.#values.length;
      this.#values.push(value);
      this.#valueNumbers.set(value, at);
    }
    return at;
  }

  #step(from: number, name: number, value: number): number {
    if (from === unknownConditions) return unknownConditions;
    const step = this.#steps.numberOf(from, this.#terms.numberOf(name, value));
    const known = this.#stepEnds[step];
    if (known !== undefined) return known;
    const { values } = this.#nodes[from] as Node;
    let to = unknownConditions;
    if (values.get(name) === value) to = from;
    else if (this.#held <= mostHeld) to = this.#nodeOf(new Map(values).set(name, value));
    this.#stepEnds.push(to);
    return to;
  }

  #nodeOf(values: ReadonlyMap<number, number>): number {
    const content = [...values]
      .sort((a, b) => a[0] - b[0])
      .map(([name, value]) => `${name}:${value}`)
      .join(' ');
    const known = this.#nodeOfContent.get(content);
    if (known !== undefined) return known;
    this.#held += values.size;
    if (this.#held > mostHeld) return unknownConditions;
    const node = this.#nodes.length;
    this.#nodes.push({ values });
    this.#nodeOfContent.set(content, node);
    return node;
  }

  #makeSet(node: Node): ConditionSet {
    const layer: string[] = [];
    const ranges = new Map<string, { low: number; high: number }>();
    let sequenceLength = 1;
    let sequencePosition = 1;
    let onRelease = false;
    const switches = new Map<string, number | string>([['trigger', 'attack']]);
    for (const [nameNumber, valueNumber] of node.values) {
      const name = this.#names.text(nameNumber);
      const value = this.#values[valueNumber] as number | string;
      const range = rangePattern.exec(name);
      if (range) {
        if (typeof value === 'number') narrow(ranges, range[2] as string, range[1] === 'lo', value);
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
        const full = fullRanges[subject.replace(/\d+$/, '')] ?? [0, Number.POSITIVE_INFINITY];
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
  const full = fullRanges[subject.replace(/\d+$/, '')] ?? [
    0,
    subject === 'rand' ? 1 : Number.POSITIVE_INFINITY,
  ];
  const range = ranges.get(subject) ?? { low: full[0], high: full[1] };
  if (isLow) range.low = value;
  else range.high = value;
  ranges.set(subject, range);
}

function areApart(a: ConditionSet, b: ConditionSet): boolean {
  if (a.layer !== b.layer) return true;
  // Ranges that share one value alone are written by people who mean them to meet, not to overlap.
  if (a.highRandom <= b.lowRandom || b.highRandom <= a.lowRandom) return true;
  if (turnsNeverMeet(a, b)) return true;
  return a.gates.some((gate, at) => {
    const other = b.gates[at] as GateRange;
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
  let conditions = conditionsOfInstrument.get(instrument);
  if (!conditions) {
    conditions = new Conditions(instrument);
    conditionsOfInstrument.set(instrument, conditions);
  }
  return conditions;
}
