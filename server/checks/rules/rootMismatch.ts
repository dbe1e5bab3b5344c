import { nameOf } from '../../model/paths';
import type { Span } from '../../model/text/span';
import { counted } from '../../model/wording/counted';
import { pitchDistanceText } from '../../model/wording/pitchDistance';
import { keyText } from '../../model/wording/rangeWords';
import type { GroupPitch } from '../facts/samples/groupPitches';
import { groupPitches } from '../facts/samples/groupPitches';
import type { PitchClaim, PitchClaims } from '../facts/samples/pitchClaims';
import { isTuned, mayBeDrums, pitchClaimsOf } from '../facts/samples/pitchClaims';
import { commonPitchFixes, pitchFixes } from '../facts/samples/pitchFixes';
import { ranksIn } from '../facts/samples/ranks';
import type { CheckContext, Rule } from '../rule';

/** Deviations from here on are reported, in cents: half a semitone (our choice). */
const leastCents = 50;
/** A pitch measured with less confidence says nothing of the root key (our choice). */
const surely = 0.8;
/** Strings, pipes and reeds are told with more confidence than bells and bars (our choice). */
const harmonicSurely = 0.9;
/** The hum of a bell lies so near to an octave below its note, in cents (our choice). */
const humCents = 150;
/** Deviations within this many cents of one another count as the same (our choice). */
const agreeingCents = 50;
/** So many samples, and this part of all, that are off by the same have one finding between them (our choice). */
const fewestCommon = 3;
const leastCommonPart = 2 / 3;

/** Finds samples that sound at another pitch than their root key and tuning say. */
export const rootMismatch: Rule = {
  code: 'root-mismatch',
  severity: 'warning',
  finds:
    'A sample whose measured pitch is 50 cents or more away from what its root key and tuning say. A group whose samples all are off by the same is information.',
  check(context, report) {
    const claims = pitchClaimsOf(context);
    if (!claims) return;
    const off = clearlyOff(claims);
    if (off.length === 0 || !isTuned(claims, surely)) return;
    const deviations = claims.deviationsOfSamples(surely);
    const common = commonDeviation(deviations);
    const isCommon = (at: number) =>
      common !== undefined && Math.abs(claims.deviationCents[at] - common) <= agreeingCents / 2;
    if (common !== undefined) {
      const together = off.filter(isCommon).map((at) => claims.at(at));
      const [first] = together;
      if (first) {
        report({
          ...placeOfRoot(context, first),
          message: commonText(together, deviations.length, common),
          fixes: () => commonPitchFixes(context, together, common),
        });
      }
    }
    const others = off.filter((at) => !isCommon(at));
    const groups = groupPitches(context.instrument, claims, others, surely);
    for (const group of groups) {
      const together = group.claims.map((at) => claims.at(at));
      report({
        ...placeOfRoot(context, together[0]),
        severity: 'information',
        message: groupText(together[0], group),
        fixes: () => commonPitchFixes(context, together, group.cents),
      });
    }
    const grouped = new Set(groups.flatMap((group) => group.claims));
    for (const same of alike(others.filter((at) => !grouped.has(at)).map((at) => claims.at(at)))) {
      report({
        ...placeOfRoot(context, same[0]),
        message: claimText(same[0], same.length - 1),
        fixes: () => pitchFixes(context, same),
      });
    }
  },
};

/** Claims put together that say the same of one sample, as the layers of an instrument may do. */
function alike(claims: readonly PitchClaim[]): Iterable<PitchClaim[]> {
  const groups = new Map<string, PitchClaim[]>();
  for (const claim of claims) {
    const { use, rootKey, tuneCents, deviationCents } = claim;
    const key = `${rootKey} ${tuneCents} ${deviationCents} ${use.path}`;
    const group = groups.get(key);
    if (group) group.push(claim);
    else groups.set(key, [claim]);
  }
  return groups.values();
}

/** The claims whose pitch is sure and another than they say. */
function clearlyOff(claims: PitchClaims): number[] {
  const { count, deviationCents, confidence, isNatural } = claims;
  // A drum on a key of its own says no pitch by that.
  const isKit = mayBeDrums(claims, surely);
  const isAlone = hasOneSample(claims);
  const off: number[] = [];
  for (let at = 0; at < count; at++) {
    const isOff = Math.abs(deviationCents[at]) >= leastCents;
    if (!isOff || confidence[at] < surely || (isKit && isNatural[at])) continue;
    if (isAlone && isNatural[at] && Math.abs(deviationCents[at]) >= 100) continue;
    if (!mayBeHum(deviationCents[at], confidence[at])) off.push(at);
  }
  if (off.length === 0) return off;
  const isOfRank = ranksIn(claims, surely);
  return off.filter((at) => !isOfRank(at));
}

/** Whether one sample is all that has a sure pitch, so that nothing tells a note on a key of its own from a noise. */
function hasOneSample({ count, confidence, path }: PitchClaims): boolean {
  let only = -1;
  for (let at = 0; at < count; at++) {
    if (confidence[at] < surely || path[at] === only) continue;
    if (only >= 0) return false;
    only = path[at];
  }
  return true;
}

/**
 * Whether a pitch may be the hum of a bell, about an octave below the note that is heard (Fletcher and Rossing, The Physics of Musical
 * Instruments): much of such a sound lies beside the multiples of its lowest partial.
 */
function mayBeHum(deviationCents: number, confidence: number): boolean {
  return confidence < harmonicSurely && Math.abs(deviationCents + 1200) <= humCents;
}

function placeOfRoot({ instrument }: CheckContext, { rootParameter, use }: PitchClaim): Span {
  return instrument.valueSpan(rootParameter >= 0 ? rootParameter : use.parameter);
}

/**
 * What most samples are off by, in cents; `undefined` where they are right, few or do not agree. Takes the deviations of all
 * in order.
 */
function commonDeviation(deviations: Float64Array): number | undefined {
  let from = 0;
  let count = 0;
  let first = 0;
  for (let last = 0; last < deviations.length; last++) {
    while (deviations[last] - deviations[first] > agreeingCents) first++;
    if (last - first + 1 <= count) continue;
    count = last - first + 1;
    from = first;
  }
  if (count < fewestCommon || count < leastCommonPart * deviations.length) return undefined;
  const [lowest, highest] = [deviations[from], deviations[from + count - 1]];
  if (Math.min(Math.abs(lowest), Math.abs(highest)) < leastCents) return undefined;
  return (lowest + highest) / 2;
}

function commonText(together: readonly PitchClaim[], all: number, cents: number): string {
  const count = samplesIn(together);
  const which = count === all ? `All ${all} samples` : `${count} of the ${all} samples`;
  const { use, rootKey, pitch } = together[0];
  const side = cents > 0 ? 'above' : 'below';
  return `${which} with a clear pitch sound ${pitchDistanceText(cents)} ${side} their root keys and tuning. Here "${nameOf(use.path)}" sounds at ${soundingText(pitch)} and has root key ${keyText(rootKey)}. Correct the root keys or the tuning of all, unless this is meant.`;
}

function groupText({ use, rootKey, pitch }: PitchClaim, { samples, cents }: GroupPitch): string {
  const side = cents > 0 ? 'above' : 'below';
  return `All ${samples} samples of this group with a clear pitch sound ${pitchDistanceText(cents)} ${side} their root keys and tuning, as a stop or harmonics do. Here "${nameOf(use.path)}" sounds at ${soundingText(pitch)} and has root key ${keyText(rootKey)}. If this is not meant, correct the root keys of the group.`;
}

function samplesIn(claims: readonly PitchClaim[]): number {
  return new Set(claims.map(({ use }) => use.path)).size;
}

/** What is wrong with a claim that so many more say too. */
function claimText(
  { use, rootParameter, rootKey, tuneCents, pitch, deviationCents }: PitchClaim,
  more: number,
): string {
  const tuned = tuneCents === 0 ? '' : ` with tune=${tuneCents}`;
  const root =
    rootParameter < 0
      ? `the root key ${keyText(rootKey)}${tuned}, used because none is set,`
      : `its root key ${keyText(rootKey)}${tuned}`;
  const side = deviationCents > 0 ? 'low' : 'high';
  const said = more === 0 ? '' : ` ${counted(more, 'more region has it so', 'more regions have it so')}.`;
  return `"${nameOf(use.path)}" sounds at ${soundingText(pitch)}: ${root} is ${pitchDistanceText(deviationCents)} too ${side}.${said} Correct the root key or the tuning, or choose the right sample.`;
}

function soundingText({ key, cents }: PitchClaim['pitch']): string {
  const whole = Math.round(cents);
  return `key ${keyText(key)}${whole === 0 ? '' : ` ${whole < 0 ? '−' : '+'}${Math.abs(whole)} cents`}`;
}
