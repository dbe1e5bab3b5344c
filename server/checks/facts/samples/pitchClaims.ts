import { keysOff } from '../../../model/inForce/headerRanges';
import type { Instrument } from '../../../model/instrument';
import { Parameter } from '../../../model/parameterNames';
import type { MeasuredPitch } from '../../../model/samples';
import type { CheckContext } from '../../rule';
import { columnInForce } from '../parameters/columnsInForce';
import { ValueAnswers } from '../parameters/valueAnswers';
import type { MeasuredSamples } from './measuredSamples';
import { measuredSamplesOf } from './measuredSamples';
import { sampleFactsOf } from './sampleFacts';
import type { SampleUse, SampleUses } from './sampleUse';
import { sampleUsesOf } from './sampleUses';

/** What a region says of the pitch of its sample, and what was measured in it. */
export interface PitchClaim {
  region: number;
  use: SampleUse;
  /** The parameter that sets the root key, or −1 where none does. */
  rootParameter: number;
  tuneParameter: number;
  /** 0 to 127, note and octave offset added. */
  rootKey: number;
  tuneCents: number;
  pitch: MeasuredPitch;
  /** How far above the root key the region sounds when that key is played. */
  deviationCents: number;
}

/** Unknown pitches to each that is known (our choice). */
const mostUnknown = 0.1;

/** Releases are noises of keys and dampers more often than notes. */
const notNotes: ReadonlySet<string> = new Set(['release', 'release_key']);
/** Regions that agree in their deviation, in cents (our choice). */
const agreeingCents = 50;
/** Deviations this close to a semitone or to octaves are mistakes of their own, in cents (our choice). */
const closeCents = 30;

/**
 * The pitches that the regions of an instrument claim and that were measured: of regions that follow the keys. In columns,
 * as an instrument has thousands that are right; {@link at} gives one with all that is to be said of it.
 */
export class PitchClaims {
  count = 0;
  /** How far above the root key regions sound when that key is played, and how sure their pitch is, 0 to 1. */
  readonly deviationCents: Float64Array;
  readonly confidence: Float64Array;
  /** Numbers of the paths of their samples; see `SampleUse`. */
  readonly path: Int32Array;
  readonly paths: number;
  /** 1 for regions of one key that is their root key: they sound at their own pitch whatever that key says. */
  readonly isNatural: Uint8Array;
  /** Pitches that are not known yet. */
  readonly unknown: number;
  readonly #context: CheckContext;
  readonly #measured: MeasuredSamples;
  readonly #regions: Int32Array;
  readonly #uses: SampleUses;
  readonly #tunes: Int32Array | undefined;
  readonly #transpositions: Int32Array | undefined;
  readonly #rootKeys: RootKeys;

  constructor(context: CheckContext, measured: MeasuredSamples) {
    const { instrument } = context;
    const uses = sampleUsesOf(context);
    const size = instrument.regions.length;
    this.deviationCents = new Float64Array(size);
    this.confidence = new Float64Array(size);
    this.path = new Int32Array(size);
    this.isNatural = new Uint8Array(size);
    this.paths = uses.paths.size;
    this.#context = context;
    this.#measured = measured;
    this.#regions = new Int32Array(size);
    this.#uses = uses;
    this.#tunes = columnInForce(instrument, 'tune');
    this.#transpositions = columnInForce(instrument, 'transpose');
    this.#rootKeys = new RootKeys(instrument);
    const following = new KeyFollowers(instrument);
    let unknown = 0;
    for (let number = 0; number < size; number++) {
      const region = instrument.regions[number];
      const use = uses.uses[uses.useOfRegion[number]];
      // Nothing is asked about a file that is not there: there can be a million.
      if (!use?.isFile || use.state.kind === 'missing' || !following.includes(region)) continue;
      const rootKey = this.#rootKeys.of(region, use);
      if (rootKey < 0) continue;
      const pitch = measured.pitch(use);
      if (pitch === undefined) unknown++;
      if (!pitch) continue;
      const deviation = this.#deviation(region, pitch, rootKey);
      if (Number.isNaN(deviation)) continue;
      const at = this.count++;
      this.deviationCents[at] = deviation;
      this.confidence[at] = pitch.confidence;
      this.path[at] = use.number;
      const isOneKey = instrument.lowKey[region] === instrument.highKey[region];
      if (isOneKey && instrument.lowKey[region] === rootKey) this.isNatural[at] = 1;
      this.#regions[at] = number;
    }
    this.unknown = unknown;
  }

  /** How far above a root key a region sounds; NaN where its tuning is no number. */
  #deviation(region: number, pitch: MeasuredPitch, rootKey: number): number {
    const { instrument } = this.#context;
    const tune = this.#tunes ? this.#tunes[region] : -1;
    const tuneCents = tune >= 0 ? instrument.number(tune) : 0;
    const sounding = 100 * pitch.key + pitch.cents + tuneCents - 100 * rootKey;
    // A transposition or an offset of all keys may mend a root key, or be meant as music; both are taken to be right.
    const transposing = this.#transpositions ? this.#transpositions[region] : -1;
    const transposition = transposing >= 0 ? instrument.number(transposing) || 0 : 0;
    const { keyOffset } = instrument.control(region);
    // With the tuning it may be a step and a little beside it: 11 semitones and 95 cents are an octave less 5 cents.
    const step = 100 * Math.round(tuneCents / 100);
    const isStep = transposition !== 0 && Math.abs(tuneCents - step) <= closeCents;
    return [
      sounding + 100 * transposition,
      sounding + 100 * keyOffset,
      isStep ? sounding - step : sounding,
    ].reduce(leastOf, sounding);
  }

  /** The header of the region of a claim. */
  regionOf(at: number): number {
    return this.#context.instrument.regions[this.#regions[at]];
  }

  /** One claim. */
  at(at: number): PitchClaim {
    const { instrument } = this.#context;
    const number = this.#regions[at];
    const region = instrument.regions[number];
    const use = this.#uses.uses[this.#uses.useOfRegion[number]];
    const tuneParameter = this.#tunes?.[region] ?? -1;
    return {
      region,
      use,
      rootParameter: this.#rootKeys.parameterOf(region),
      tuneParameter,
      rootKey: this.#rootKeys.of(region, use),
      tuneCents: tuneParameter >= 0 ? instrument.number(tuneParameter) : 0,
      pitch: this.#measured.pitch(use) as MeasuredPitch,
      deviationCents: this.deviationCents[at],
    };
  }

  /** All claims, in the order of the regions. */
  all(): PitchClaim[] {
    return Array.from({ length: this.count }, (_, at) => this.at(at));
  }

  /** The deviations of claims that are as sure as that, in order, of each sample the last one. */
  deviationsOfSamples(surely: number): Float64Array {
    const latest = new Float64Array(this.paths).fill(Number.NaN);
    for (let at = 0; at < this.count; at++) {
      const isSure = this.confidence[at] >= surely;
      if (isSure) latest[this.path[at]] = this.deviationCents[at];
    }
    return latest.filter((deviation) => !Number.isNaN(deviation)).sort();
  }

  /** How many samples there are claims about. */
  countSamples(): number {
    const seen = new Uint8Array(this.paths);
    let count = 0;
    for (let at = 0; at < this.count; at++) {
      const path = this.path[at];
      if (seen[path] === 0) count++;
      seen[path] = 1;
    }
    return count;
  }
}

function leastOf(a: number, b: number): number {
  return Math.abs(b) < Math.abs(a) ? b : a;
}

/**
 * The pitches that the regions of an instrument claim and that were measured. `undefined` where nothing is measured or much
 * is not known yet; a few that are being measured do not take the others away.
 */
export function pitchClaimsOf(context: CheckContext): PitchClaims | undefined {
  const measured = measuredSamplesOf(context);
  if (!measured) return undefined;
  const claims = new PitchClaims(context, measured);
  return claims.unknown > mostUnknown * claims.count ? undefined : claims;
}

/** Which regions play a note at the pitch of its key: no drum hit, no release noise, no fixed pitch. */
class KeyFollowers {
  readonly #instrument: Instrument;
  readonly #trackings: Int32Array | undefined;
  readonly #triggers: Int32Array | undefined;
  readonly #modes: Int32Array | undefined;
  readonly #isNoNote: ValueAnswers<boolean>;
  readonly #isOneShot: ValueAnswers<boolean>;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    this.#trackings = columnInForce(instrument, 'pitch_keytrack');
    this.#triggers = columnInForce(instrument, 'trigger');
    this.#modes = columnInForce(instrument, 'loop_mode');
    this.#isNoNote = new ValueAnswers(instrument, (text) => notNotes.has(text.toLowerCase()));
    this.#isOneShot = new ValueAnswers(instrument, (text) => text.toLowerCase() === 'one_shot');
  }

  includes(region: number): boolean {
    const instrument = this.#instrument;
    const low = instrument.lowKey[region];
    const high = instrument.highKey[region];
    if (low === keysOff || high === keysOff) return false;
    const tracking = this.#trackings ? this.#trackings[region] : -1;
    if (tracking >= 0 && instrument.number(tracking) !== 100) return false;
    if (this.#triggers && this.#isNoNote.of(this.#triggers[region]) === true) return false;
    // A key or two that play their sample to the end whatever happens are percussion (common practice).
    return !(high - low < 2 && this.#modes && this.#isOneShot.of(this.#modes[region]) === true);
  }
}

/** The root keys in force. */
class RootKeys {
  readonly #instrument: Instrument;
  readonly #centers: Int32Array | undefined;
  readonly #keys: Int32Array | undefined;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    this.#centers = columnInForce(instrument, Parameter.pitch_keycenter);
    this.#keys = columnInForce(instrument, Parameter.key);
  }

  /** The parameter that sets the root key of a region, or −1. */
  parameterOf(region: number): number {
    // What is in force stands further in than what it takes the place of, and so behind it.
    const center = this.#centers ? this.#centers[region] : -1;
    const key = this.#keys ? this.#keys[region] : -1;
    return Math.max(center, key);
  }

  /** The root key of a region, 0 to 127; −1 where the text does not say enough to hold it against the sound. */
  of(region: number, use: SampleUse): number {
    const instrument = this.#instrument;
    const parameter = this.parameterOf(region);
    if (parameter < 0) {
      // Players differ in whether the file's own root key counts then, and one key or all of them are no sign of a note.
      const [low, high] = [instrument.lowKey[region], instrument.highKey[region]];
      const saysTooLittle = low === high || (low === 0 && high === 127) || rootKeyOfFile(use) >= 0;
      return saysTooLittle ? -1 : instrument.rootKey(region);
    }
    const plain = instrument.number(parameter);
    if (Number.isNaN(plain) && instrument.valueText(parameter).toLowerCase() === 'sample') {
      return rootKeyOfFile(use);
    }
    const key = Number.isNaN(plain) ? instrument.keyNumber(parameter) : plain;
    if (!(key >= 0 && key <= 127)) return -1;
    return Math.max(0, Math.min(127, key + instrument.control(region).keyOffset));
  }
}

function rootKeyOfFile({ state }: SampleUse): number {
  return sampleFactsOf(state)?.rootKey ?? -1;
}

/**
 * Whether an instrument is one of tuned notes, so that a note off its place is a mistake and not a drum: at least half
 * of its samples have a sure pitch, and of these at least half are where they should be, off by an octave or a semitone,
 * or off by the same as others.
 */
export function isTuned(claims: PitchClaims, surely: number): boolean {
  const deviations = claims.deviationsOfSamples(surely);
  if (deviations.length * 2 < claims.countSamples()) return false;
  const named = deviations.filter(isNamed).length;
  return Math.max(named, mostAgreeing(deviations)) * 2 >= deviations.length;
}

/** So many samples on keys of their own may be a kit of drums, unless this part of all agrees (our choice). */
const fewestDrums = 4;
const tunedPart = 1 / 2;

/**
 * Whether an instrument may be a kit of drums: several samples stand on keys of their own that are their root keys, and what
 * they are off by does not agree.
 */
export function mayBeDrums(claims: PitchClaims, surely: number): boolean {
  let natural = 0;
  for (let at = 0; at < claims.count; at++) natural += claims.isNatural[at];
  if (natural < fewestDrums) return false;
  const deviations = claims.deviationsOfSamples(surely);
  return mostAgreeing(deviations) < tunedPart * deviations.length;
}

/** The most that lie within {@link agreeingCents} of one another; takes deviations in order. */
function mostAgreeing(deviations: Float64Array): number {
  let most = 0;
  let first = 0;
  for (let last = 0; last < deviations.length; last++) {
    while (deviations[last] - deviations[first] > agreeingCents) first++;
    most = Math.max(most, last - first + 1);
  }
  return most;
}

function isNamed(cents: number): boolean {
  const away = Math.abs(cents);
  const isNear = (semitones: number) => Math.abs(away - 100 * semitones) <= closeCents;
  return away < agreeingCents || isNear(1) || isNear(12) || isNear(24);
}
