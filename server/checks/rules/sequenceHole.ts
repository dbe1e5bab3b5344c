import type { ConditionSet } from '../../model/overlaps/conditionSets';
import { conditionsOf } from '../../model/overlaps/conditions';
import { PairNumbers } from '../../model/overlaps/pairNumbers';
import { rectangleCodesOf } from '../../model/overlaps/rectangles';
import { Parameter } from '../../model/parameterNames';
import { counted } from '../../model/wording/counted';
import { listText } from '../../model/wording/listText';
import { keysText, velocitiesText } from '../../model/wording/rangeWords';
import { valueFix } from '../facts/parameters/parameterFixes';
import { usedName } from '../facts/parameters/parameterUses';
import { RegionNeighbours, rectangleOfCode, situationText } from '../facts/regionNeighbours';
import type { CheckContext, Report, Rule } from '../rule';

/**
 * Longer sequences, of which the format allows 100 steps, are not looked into (our choice; public documentation of the open
 * SFZ format, seq_length).
 */
const longest = 30;

/** Regions with equal keys, velocities and conditions that take turns in a round robin. */
interface Sequence {
  region: number;
  code: number;
  set: ConditionSet;
  /** Steps that a region has: a bit for each, that of step 1 the lowest. */
  taken: number;
}

/**
 * Finds steps of round robins that no region has, and positions past the length. A step counts as filled as soon as
 * any region can sound there in part of the same keys, velocities and conditions, be it in a round robin or not.
 */
export const sequenceHole: Rule = {
  code: 'sequence-hole',
  severity: 'warning',
  finds:
    'A step of a round robin that no region has, or a position beyond its length. Steps missing between others, which may be rests, are information.',
  check(context, report) {
    if (usedName(context, 'seq_length') < 0 && usedName(context, 'seq_position') < 0) return;
    const sequences = collectSequences(context, report);
    reportHoles(context, sequences, report);
  },
};

function collectSequences(context: CheckContext, report: Report): Iterable<Sequence> {
  const { instrument } = context;
  const conditions = conditionsOf(instrument);
  const sequences: Sequence[] = [];
  /** Situations with a rectangle. */
  const places = new PairNumbers();
  const situations = new Map<string, number>();
  const situationOf: number[] = [];
  const beyond = new Set<string>();
  let lastSituation = -1;
  let last: Sequence | undefined;
  const codes = rectangleCodesOf(instrument);
  for (let at = 0; at < codes.length; at++) {
    const region = instrument.regions[at];
    const number = conditions.ofHeader[region];
    const set = conditions.set(number);
    const { sequenceLength: length, sequencePosition: position } = set;
    if (length === 1 && position === 1) continue;
    if (position > length) {
      reportBeyond(context, region, beyond, report);
      continue;
    }
    const code = length > longest ? -1 : codes[at];
    if (code < 0) continue;
    let situation = situationOf[number];
    if (situation === undefined) {
      const text = `${length} ${set.lowRandom} ${set.highRandom} ${situationText(set)}`;
      situation = situations.get(text) ?? situations.size;
      situations.set(text, situation);
      situationOf[number] = situation;
    }
    if (situation !== lastSituation || code !== last?.code) {
      lastSituation = situation;
      last = sequences[places.numberOf(situation, code)];
      if (!last) {
        last = { region, code, set, taken: 0 };
        sequences.push(last);
      }
    }
    last.taken |= 1 << (position - 1);
  }
  return sequences;
}

function reportBeyond(context: CheckContext, region: number, seen: Set<string>, report: Report): void {
  const { instrument } = context;
  const position = instrument.effective(region, Parameter.seq_position);
  const length = instrument.effective(region, Parameter.seq_length);
  const key = `${position} ${length}`;
  if (position < 0 || seen.has(key)) return;
  // A length that is no number has a finding of its own.
  if (length >= 0 && Number.isNaN(instrument.number(length))) return;
  seen.add(key);
  const text = instrument.valueText(position);
  report({
    ...instrument.valueSpan(position),
    message:
      length < 0
        ? `Step ${text} never sounds, because its round robin has no length. Set seq_length for its regions.`
        : `Step ${text} is beyond seq_length=${instrument.valueText(length)}, so this never sounds. Raise the length or lower the position.`,
    ...(length >= 0 && {
      related: [{ ...instrument.valueSpan(length), message: 'The length of the round robin is set here.' }],
      fixes: () => valueFix(context, length, text, `Set seq_length=${text}`, false),
    }),
  });
}

function reportHoles(context: CheckContext, sequences: Iterable<Sequence>, report: Report): void {
  const { instrument } = context;
  let neighbours: RegionNeighbours | undefined;
  const mixed = new Map<number, SilentStrikes & { code: number }>();
  const told = new Map<string, { holes: number[]; sequence: Sequence; length: number; count: number }>();
  for (const sequence of sequences) {
    if (sequence.taken === 2 ** sequence.set.sequenceLength - 1) continue;
    neighbours ??= new RegionNeighbours(instrument, conditionsOf(instrument));
    fillFrom(neighbours, sequence);
    if (neighbours.isExhausted) break;
    const holes: number[] = [];
    for (let step = 1; step <= sequence.set.sequenceLength; step++) {
      if ((sequence.taken & (1 << (step - 1))) === 0) holes.push(step);
    }
    const length = instrument.effective(sequence.region, Parameter.seq_length);
    if (length < 0) continue;
    if (holes.length === 0) {
      const unlike = mixed.has(length) ? undefined : silentStrikes(neighbours, sequence);
      if (unlike) mixed.set(length, { ...unlike, code: sequence.code });
      continue;
    }
    const key = `${length} ${holes.join()}`;
    const known = told.get(key);
    if (known) known.count++;
    else told.set(key, { holes, sequence, length, count: 1 });
  }
  // Lengths that are unlike may leave no step without a region, and some strikes silent all the same.
  for (const [length, { lengths, silent, all, code }] of told.size > 0 ? [] : mixed) {
    if (neighbours?.isExhausted) return;
    report({
      ...instrument.valueSpan(length),
      severity: 'information',
      message: `Round robins of ${listText(lengths, 'and')} steps meet on ${areaText(code)}, so ${silent} of ${all} strikes are silent. Give all the same seq_length, or leave it if the silence is meant.`,
    });
  }
  for (const { holes, sequence, length, count } of told.values()) {
    const { code, set } = sequence;
    const steps = set.sequenceLength;
    const elsewhere = count > 1 ? `, and in ${counted(count - 1, 'more place')}` : '';
    const filled = steps - holes.length;
    const isSlip = holes.length === 1 || (filled > 1 && holes[0] === filled + 1);
    report({
      ...instrument.valueSpan(length),
      severity: isSlip ? 'warning' : 'information',
      message: `No region has ${stepsText(holes)} of ${steps} on ${areaText(code)}${elsewhere}, so some strikes are silent. Add the missing regions, or set seq_length to the number of regions. Leave it if the silence is meant.`,
      fixes: () =>
        // Where the first steps are filled and the rest is not, the length is what is wrong.
        holes[0] === filled + 1
          ? valueFix(context, length, String(filled), `Set seq_length=${filled}`, false)
          : [],
    });
  }
}

/** Marks the steps of a sequence at which other regions can sound. */
function fillFrom(neighbours: RegionNeighbours, sequence: Sequence): void {
  const { code, set } = sequence;
  for (const other of neighbours.setsMeeting(code, set)) {
    if (other.highRandom <= set.lowRandom || other.lowRandom >= set.highRandom) continue;
    if (other.sequencePosition > other.sequenceLength) continue;
    // Turns meet where they are congruent modulo the greatest common divisor of the lengths.
    const divisor = greatestCommonDivisor(other.sequenceLength, set.sequenceLength);
    for (let step = (other.sequencePosition - 1) % divisor; step < set.sequenceLength; step += divisor) {
      sequence.taken |= 1 << step;
    }
  }
}

/** Strikes after which round robins of unlike lengths begin anew that are counted out (our choice). */
const mostStrikes = 60;

/** What unlike round robins leave without sound: so many of the strikes after which they begin anew. */
interface SilentStrikes {
  lengths: string[];
  silent: number;
  all: number;
}

/** Strikes that no region has its turn at, where round robins of unlike lengths meet; `undefined` where there are none. */
function silentStrikes(neighbours: RegionNeighbours, { code, set }: Sequence): SilentStrikes | undefined {
  const sets = [...new Set(neighbours.setsMeeting(code, set))].filter(
    (one) => one.highRandom > set.lowRandom && one.lowRandom < set.highRandom,
  );
  const lengths = [...new Set(sets.map((one) => one.sequenceLength))].sort((a, b) => a - b);
  let all = 1;
  for (const length of lengths) all = (all * length) / greatestCommonDivisor(all, length);
  if (!(all <= mostStrikes)) return undefined;
  let silent = 0;
  for (let strike = 0; strike < all; strike++) {
    const sounds = sets.some((one) => strike % one.sequenceLength === one.sequencePosition - 1);
    if (!sounds) silent++;
  }
  return silent === 0 ? undefined : { lengths: lengths.map(String), silent, all };
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}

function stepsText(steps: readonly number[]): string {
  const shown = steps.slice(0, 6).join(', ');
  return steps.length === 1 ? `step ${shown}` : `steps ${shown}${steps.length > 6 ? ', …' : ''}`;
}

function areaText(code: number): string {
  const { lowKey, highKey, lowVelocity, highVelocity } = rectangleOfCode(code);
  const keys = keysText(lowKey, highKey);
  return lowVelocity <= 1 && highVelocity === 127
    ? keys
    : `${keys} at ${velocitiesText(lowVelocity, highVelocity)}`;
}
