import type { Instrument } from '../../model/instrument';
import { unknownConditions } from '../../model/overlaps/conditionSets';
import type { Conditions } from '../../model/overlaps/conditions';
import { conditionsOf } from '../../model/overlaps/conditions';
import type { Rectangle } from '../../model/overlaps/rectangles';
import { rectangleCodesOf } from '../../model/overlaps/rectangles';
import { nameOf } from '../../model/paths';
import type { SampleSurvey } from '../../model/samples';
import { counted } from '../../model/wording/counted';
import { keysText, velocitiesText } from '../../model/wording/rangeWords';
import { columnInForce } from '../facts/parameters/columnsInForce';
import { parameterUsesOf } from '../facts/parameters/parameterUses';
import { rectangleOfCode } from '../facts/regionNeighbours';
import type { PlayedLoudnesses } from '../facts/samples/playedLoudness';
import { playedLoudnessesOf } from '../facts/samples/playedLoudness';
import type { PlayedSample } from '../facts/samples/playedSamples';
import { playedSamplesOf, surveysOf } from '../facts/samples/playedSamples';
import { placeInRegion } from '../facts/samples/samplePaths';
import type { CheckContext, Rule, RuleFinding } from '../rule';

/**
 * A layer counts as softer than the one below it from here on, in dB of loudness and of peak. Samples that were all brought
 * to one peak differ in loudness by some dB, and those of one loudness in peak, which is no fault (common practice).
 */
const leastLoudnessDb = 6;
const leastPeakDb = 3;
/** Layers that share at least this part of the keys of both are compared (our choice). */
const leastShared = 0.5;
/** Further places that a finding points to; of more, none. */
const mostRelated = 5;
/** The velocities in a rectangle code; see `rectangleCode`. */
const allVelocities = 0x3fff;

/** A layer that is softer than the one below; regions by their positions in `Instrument.regions`. */
interface Inversion {
  upper: number;
  lower: number;
  softerDb: number;
}

/** Finds layers for hard strokes that sound softer than the layer for softer ones. */
export const velocityOrder: Rule = {
  code: 'velocity-order',
  severity: 'information',
  finds: 'A velocity layer that is 6 dB or more softer than the layer for softer strokes on the same keys.',
  check(context, report) {
    const loudnesses = playedLoudnessesOf(context);
    if (!loudnesses || hasCurves(context)) return;
    const codes = rectangleCodesOf(context.instrument);
    const layers = new Layers(context, loudnesses);
    /** By the conditions and the velocities of both layers. */
    const found = new Map<string, Inversion[]>();
    for (const inversion of layers.inversions()) {
      const { upper, lower } = inversion;
      const [above, below] = [codes[upper], codes[lower]];
      const key = `${layers.conditionsOf(upper)} ${above & allVelocities} ${below & allVelocities}`;
      const list = found.get(key);
      if (list) list.push(inversion);
      else found.set(key, [inversion]);
    }
    for (const inversions of found.values()) report(findingOf(context, inversions));
  },
};

/** Whether velocity is given curves of its own, which nothing here reads. */
function hasCurves(context: CheckContext): boolean {
  const { names } = context.instrument;
  return [...parameterUsesOf(context).names].some((name) => names.text(name).startsWith('amp_velcurve_'));
}

/** What sounds on the same keys and velocities under the same conditions, with what lies below it. */
class Layers {
  readonly #ofRegion: readonly (PlayedSample | undefined)[];
  readonly #surveys: readonly (SampleSurvey | null | undefined)[];
  readonly #instrument: Instrument;
  readonly #conditions: Conditions;
  readonly #codes: Int32Array;
  readonly #gains: VelocityGains;
  /**
   * The level in dB of what sounds at one time and how many regions that are, at its first region; and the first region of each.
   */
  readonly #level: Float64Array;
  readonly #regions: Int32Array;
  readonly #first: Int32Array;
  /** The next region under the same conditions, or −1. */
  readonly #next: Int32Array;
  readonly #loudnesses: PlayedLoudnesses;
  /** The first region on a key by its highest velocity, plus one. Emptied after each set of conditions. */
  readonly #byEnd = new Int32Array(128 * 128);

  constructor(context: CheckContext, loudnesses: PlayedLoudnesses) {
    this.#ofRegion = playedSamplesOf(context).ofRegion;
    this.#surveys = surveysOf(context);
    this.#instrument = context.instrument;
    this.#conditions = conditionsOf(context.instrument);
    this.#codes = rectangleCodesOf(context.instrument);
    this.#gains = new VelocityGains(context.instrument);
    this.#loudnesses = loudnesses;
    const count = this.#codes.length;
    this.#level = new Float64Array(count);
    this.#regions = new Int32Array(count);
    this.#first = new Int32Array(count);
    this.#next = new Int32Array(count);
  }

  /** The number of the conditions of a region. */
  conditionsOf(number: number): number {
    return this.#conditions.ofHeader[this.#instrument.regions[number]];
  }

  inversions(): Inversion[] {
    const found: Inversion[] = [];
    for (const [set, first] of this.#chainBySet()) {
      if (set === unknownConditions || this.#conditions.set(set).onRelease) continue;
      this.#addInversions(first, found);
    }
    return found;
  }

  /** Chains the regions under each set of conditions in the order of the text; answers the first of each. */
  #chainBySet(): Map<number, number> {
    const firsts = new Map<number, number>();
    let last = -1;
    let next = -1;
    for (let number = this.#codes.length - 1; number >= 0; number--) {
      if (this.#codes[number] < 0) continue;
      const set = this.conditionsOf(number);
      if (set !== last) {
        if (next >= 0) firsts.set(last, next);
        last = set;
        next = firsts.get(set) ?? -1;
      }
      this.#next[number] = next;
      next = number;
    }
    if (next >= 0) firsts.set(last, next);
    return firsts;
  }

  /** Adds what is the wrong way round in a chain of regions. */
  #addInversions(start: number, found: Inversion[]): void {
    for (let number = start; number >= 0; number = this.#next[number]) this.#enter(number);
    const softer: Inversion[] = [];
    for (let upper = start; upper >= 0; upper = this.#next[upper]) {
      if (this.#first[upper] !== upper) continue;
      const lower = this.#below(upper);
      if (lower < 0 || this.#regions[lower] !== this.#regions[upper]) continue;
      const softerDb = this.#softerBy(upper, lower);
      if (softerDb !== undefined) softer.push({ upper, lower, softerDb });
    }
    if (softer.length > 0) found.push(...this.#withLowerPeaks(softer, start));
    for (let number = start; number >= 0; number = this.#next[number]) {
      const { lowKey, highKey, highVelocity } = rectangleOfCode(this.#codes[number]);
      this.#byEnd.fill(0, highVelocity * 128 + lowKey, highVelocity * 128 + highKey + 1);
    }
  }

  /** Takes a region in. */
  #enter(number: number): void {
    const code = this.#codes[number];
    const { lowKey, highKey, highVelocity } = rectangleOfCode(code);
    const row = highVelocity * 128;
    const level = this.#loudnesses.loudness[number];
    const before = this.#byEnd[row + lowKey] - 1;
    if (before >= 0 && this.#codes[before] === code) {
      // Not a number where one of them is not known, so that nothing is said of them.
      this.#level[before] = sumOfLevels(this.#level[before], level);
      this.#first[number] = before;
      this.#regions[before] = this.#regions[before] + 1;
      return;
    }
    this.#level[number] = level;
    this.#first[number] = number;
    this.#regions[number] = 1;
    for (let key = lowKey; key <= highKey; key++) {
      if (this.#byEnd[row + key] === 0) this.#byEnd[row + key] = number + 1;
    }
  }

  /** What ends next below a layer in the middle of its keys, −1 for nothing. */
  #below(number: number): number {
    const { lowKey, highKey, lowVelocity } = rectangleOfCode(this.#codes[number]);
    const middle = (lowKey + highKey) >> 1;
    for (let velocity = lowVelocity - 1; velocity > 0; velocity--) {
      const there = this.#byEnd[velocity * 128 + middle];
      if (there > 0) return there - 1;
    }
    return -1;
  }

  /** By how many dB a layer is clearly softer than the one below it. */
  #softerBy(upper: number, lower: number): number | undefined {
    const above = rectangleOfCode(this.#codes[upper]);
    const below = rectangleOfCode(this.#codes[lower]);
    if (this.#ofRegion[upper] === this.#ofRegion[lower] || !shareKeys(above, below)) return undefined;
    const softerDb = this.#level[lower] - this.#level[upper] - this.#gainBetween(upper, lower);
    return softerDb >= leastLoudnessDb ? softerDb : undefined;
  }

  /** What velocity adds from one layer to the one above it, in dB, where one takes over from the other. */
  #gainBetween(upper: number, lower: number): number {
    const { lowVelocity } = rectangleOfCode(this.#codes[upper]);
    const { highVelocity } = rectangleOfCode(this.#codes[lower]);
    return this.#gains.of(upper, lowVelocity) - this.#gains.of(lower, highVelocity);
  }

  /** Those of some inversions in which the peak of the upper layer is clearly lower too. */
  #withLowerPeaks(inversions: readonly Inversion[], start: number): Inversion[] {
    const peaks = new Map<number, number>();
    for (let number = start; number >= 0; number = this.#next[number]) {
      const survey = this.#survey(number);
      const gain = this.#loudnesses.gain[number];
      const peak = survey ? 20 * Math.log10(survey.peak) + gain : Number.NaN;
      const first = this.#first[number];
      peaks.set(first, Math.max(peaks.get(first) ?? Number.NEGATIVE_INFINITY, peak));
    }
    return inversions.filter(({ upper, lower }) => {
      const difference = (peaks.get(lower) as number) - (peaks.get(upper) as number);
      return difference - this.#gainBetween(upper, lower) >= leastPeakDb;
    });
  }

  #survey(number: number): SampleSurvey | null | undefined {
    const sample = this.#ofRegion[number];
    return sample && this.#surveys[sample.number];
  }
}

/** The level in dB of two sounds together that have nothing to do with one another. */
function sumOfLevels(one: number, other: number): number {
  return 10 * Math.log10(10 ** (one / 10) + 10 ** (other / 10));
}

function shareKeys(a: Rectangle, b: Rectangle): boolean {
  const shared = Math.min(a.highKey, b.highKey) - Math.max(a.lowKey, b.lowKey) + 1;
  const most = Math.max(a.highKey - a.lowKey, b.highKey - b.lowKey) + 1;
  return shared >= leastShared * most;
}

/** What velocity does to the level of regions. */
class VelocityGains {
  readonly #instrument: Instrument;
  readonly #tracks: Int32Array | undefined;
  /** The gains of all velocities for the part of the tracking that was asked about last; mostly all regions have one. */
  readonly #gains = new Float64Array(128);
  #part = Number.NaN;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    this.#tracks = columnInForce(instrument, 'amp_veltrack');
  }

  /**
   * The gain of a velocity in dB, NaN where it cannot be told. The public documentation of the format gives
   * an attenuation of 20 log (127² / velocity²) at 100 %; less of it at less is how players commonly read it.
   */
  of(number: number, velocity: number): number {
    const region = this.#instrument.regions[number];
    const parameter = this.#tracks ? this.#tracks[region] : -1;
    const part = parameter < 0 ? 1 : this.#instrument.number(parameter) / 100;
    if (!(part >= 0 && part <= 1)) return Number.NaN;
    if (part !== this.#part) {
      this.#part = part;
      for (let at = 0; at < this.#gains.length; at++) {
        this.#gains[at] = 20 * Math.log10(1 - part + part * (at / 127) ** 2);
      }
    }
    return this.#gains[velocity];
  }
}

function findingOf(context: CheckContext, inversions: readonly Inversion[]): RuleFinding {
  const { instrument } = context;
  const { ofRegion } = playedSamplesOf(context);
  const codes = rectangleCodesOf(instrument);
  const [{ upper, lower, softerDb }, ...others] = inversions as [Inversion, ...Inversion[]];
  const titleOf = (number: number) => {
    const { lowVelocity, highVelocity } = rectangleOfCode(codes[number]);
    const { path } = (ofRegion[number] as PlayedSample).use;
    return `"${nameOf(path)}" (${velocitiesText(lowVelocity, highVelocity)})`;
  };
  const placeAt = (number: number) => placeInRegion(instrument, instrument.regions[number]);
  const { lowKey, highKey } = rectangleOfCode(codes[upper]);
  const more =
    others.length === 0 ? '' : ` The same holds in ${counted(others.length, 'more place')} of these layers.`;
  const further = others.length > mostRelated ? [] : others;
  return {
    ...placeAt(upper),
    message: `${titleOf(upper)} is ${softerDb.toFixed(0)} dB softer than ${titleOf(lower)} on ${keysText(lowKey, highKey)}, although harder strokes play it, with volume and velocity counted in.${more} Swap the samples or the velocities, or set volume.`,
    related: [
      { ...placeAt(lower), message: 'The layer below is here.' },
      ...further.map((one) => ({
        ...placeAt(one.upper),
        message: `${titleOf(one.upper)} is softer than the layer below too.`,
      })),
    ],
  };
}
