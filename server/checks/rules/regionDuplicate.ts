import type { Instrument } from '../../model/instrument';
import { conditionsInSteps } from '../../model/overlaps/conditions';
import { PairNumbers } from '../../model/overlaps/pairNumbers';
import { rectangleCodesOf } from '../../model/overlaps/rectangles';
import { Parameter } from '../../model/parameterNames';
import { piecesInStep } from '../../model/steps';
import { fixOf } from '../facts/parameters/parameterFixes';
import { placeText, regionTitle } from '../facts/regionText';
import { sampleUsesInSteps } from '../facts/samples/sampleUses';
import type { Rule } from '../rule';

/** Regions with one place and condition that are compared one by one; of more, those with the same sample are looked up. */
const mostInStack = 16;

/** An instrument has few regions with one place, condition and sample; text made of nothing else is not compared for ever. */
const mostComparisons = 20_000;

/** Finds regions that play the same sample under the same conditions and with the same sound as another. */
export const regionDuplicate: Rule = {
  code: 'region-duplicate',
  severity: 'warning',
  finds: 'The same sample twice under the same conditions, so it sounds twice at once.',
  *check(context, report) {
    const { instrument, notation } = context;
    const conditions = yield* conditionsInSteps(instrument);
    const { uses, useOfRegion } = yield* sampleUsesInSteps(context);
    const codes = rectangleCodesOf(instrument);
    /** Conditions with a rectangle. */
    const places = new PairNumbers(codes.length);
    /** The first region of each place, and all of those places where there are more. */
    const firsts = new Int32Array(codes.length);
    /** The numbers of the samples that regions play, as far as they were come to. */
    const samples = new Int32Array(codes.length);
    const stacks = new Map<number, number[]>();
    const crowded = new Map<string, number[]>();
    const { regions } = instrument;
    let comparisons = 0;
    for (let number = 0; number < regions.length; number++) {
      if (number % piecesInStep === piecesInStep - 1) yield number / regions.length;
      const use = uses[useOfRegion[number]];
      if (!use || use.path === '' || use.path === '*silence') continue;
      samples[number] = use.number;
      const region = regions[number];
      const code = codes[number];
      if (code < 0) continue;
      const known = places.count;
      const place = places.numberOf(conditions.ofHeader[region], code);
      if (place === known) {
        firsts[place] = number;
        continue;
      }
      const rivals = stacks.get(place) ?? [firsts[place]];
      const isTwin = (one: number) =>
        samples[one] === use.number &&
        comparisons++ < mostComparisons &&
        soundsAlike(instrument, regions[one], region);
      const found =
        rivals.find(isTwin) ??
        (rivals.length < mostInStack ? undefined : crowded.get(`${place} ${use.number}`)?.find(isTwin));
      if (found === undefined) {
        if (rivals.length < mostInStack) {
          rivals.push(number);
          stacks.set(place, rivals);
        } else append(crowded, `${place} ${use.number}`, number);
        continue;
      }
      const twin = regions[found];
      report({
        ...instrument.headerSpan(region),
        message: `${regionTitle(instrument, region)} repeats ${placeText(instrument, twin)}: same keys, velocities, conditions and sound. It sounds twice at once, about 6 dB louder. Remove one of the two.`,
        related: [{ ...instrument.headerSpan(twin), message: 'The same region stands here first.' }],
        fixes: () =>
          fixOf(
            'Remove this region',
            notation.edit(instrument, { kind: 'removeHeader', header: region }).edits,
            false,
          ),
      });
    }
  },
};

function append(lists: Map<string, number[]>, key: string, number: number): void {
  const list = lists.get(key);
  if (!list) lists.set(key, [number]);
  else if (list.length < mostInStack) list.push(number);
}

/** Whether two regions with the same sample, keys, velocities and conditions have all else in common, labels aside. */
function soundsAlike(instrument: Instrument, one: number, two: number): boolean {
  if (instrument.rootKey(one) !== instrument.rootKey(two)) return false;
  const first = soundOf(instrument, one);
  const second = soundOf(instrument, two);
  if (first.size !== second.size) return false;
  for (const [name, value] of first) if (second.get(name) !== value) return false;
  // A random part makes two equal regions a doubling that is meant.
  return ![...first.keys()].some((name) => /random/.test(instrument.names.text(name)));
}

const withoutSound = new Set<number>([
  Parameter.sample,
  Parameter.key,
  Parameter.lokey,
  Parameter.hikey,
  Parameter.pitch_keycenter,
  Parameter.lovel,
  Parameter.hivel,
  Parameter.region_label,
  Parameter.group_label,
  Parameter.master_label,
  Parameter.global_label,
]);

function soundOf(instrument: Instrument, region: number): Map<number, number | string> {
  const values = new Map<number, number | string>();
  for (const { name, parameter } of instrument.effectiveParameters(region)) {
    if (withoutSound.has(name)) continue;
    const number = instrument.number(parameter);
    values.set(name, Number.isNaN(number) ? instrument.valueText(parameter) : number);
  }
  return values;
}
