import { keysOff } from '../model/instrument';
import { Parameter } from '../model/parameterNames';
import type { MeasuredPitch } from '../model/samples';
import { FewInForce } from './fewInForce';
import { InForce } from './inForce';
import type { CheckContext } from './rule';
import type { SampleUse } from './sampleUses';
import { factsOf, sampleUsesOf } from './sampleUses';

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

/** Unknown pitches to each that is known. */
const mostUnknown = 0.1;

const pitchNames = ['tune', 'transpose', 'pitch_keytrack', 'trigger', 'loop_mode'] as const;
type PitchesInForce = FewInForce<(typeof pitchNames)[number]>;

/** Releases are noises of keys and dampers more often than notes. */
const notNotes: ReadonlySet<string> = new Set(['release', 'release_key']);
/** Regions that agree in their deviation, in cents. */
const agreeingCents = 50;
/** Deviations this close to a semitone or to octaves are mistakes of their own, in cents. */
const closeCents = 30;

/**
 * The pitches that the regions of an instrument claim and that were measured: of regions that follow the keys. `undefined`
 * where nothing is measured or much is not known yet; a few that are being measured do not take the others away.
 */
export function pitchClaimsOf(context: CheckContext): PitchClaim[] | undefined {
  const { instrument, samples } = context;
  const { measures } = samples;
  if (!measures) return undefined;
  const { uses, useOfRegion } = sampleUsesOf(context);
  const inForce = new InForce(instrument);
  const few = new FewInForce(instrument, pitchNames);
  const claims: PitchClaim[] = [];
  let unknown = 0;
  for (let number = 0; number < instrument.regions.length; number++) {
    const region = instrument.regions[number] as number;
    const use = uses[useOfRegion[number] as number];
    if (!use?.isFile || !followsKeys(context, few, region)) continue;
    const root = rootOf(context, inForce, region, use);
    if (!root) continue;
    const pitch = measures.pitch(use.path);
    if (pitch === undefined) unknown++;
    if (!pitch) continue;
    const tuneParameter = few.of(region, 'tune');
    const tuneCents = tuneParameter >= 0 ? instrument.number(tuneParameter) : 0;
    if (Number.isNaN(tuneCents)) continue;
    const sounding = 100 * pitch.key + pitch.cents + tuneCents - 100 * root.key;
    // A transposition or an offset of all keys may mend a root key, or be meant as music; both are taken to be right.
    const transposing = few.of(region, 'transpose');
    const transposition = transposing >= 0 ? instrument.number(transposing) || 0 : 0;
    const { keyOffset } = instrument.control(region);
    const readings = [sounding, sounding + 100 * transposition, sounding + 100 * keyOffset];
    const deviationCents = readings.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
    claims.push({
      region,
      use,
      rootParameter: root.parameter,
      tuneParameter,
      rootKey: root.key,
      tuneCents,
      pitch,
      deviationCents,
    });
  }
  return unknown > mostUnknown * claims.length ? undefined : claims;
}

/** Whether a region plays a note at the pitch of its key: no drum hit, no release noise, no fixed pitch. */
function followsKeys({ instrument }: CheckContext, few: PitchesInForce, region: number): boolean {
  const [low, high] = [instrument.lowKey[region] as number, instrument.highKey[region] as number];
  if (low === keysOff || high === keysOff) return false;
  const tracking = few.of(region, 'pitch_keytrack');
  if (tracking >= 0 && instrument.number(tracking) !== 100) return false;
  const trigger = few.of(region, 'trigger');
  if (trigger >= 0 && notNotes.has(instrument.valueText(trigger).toLowerCase())) return false;
  const mode = few.of(region, 'loop_mode');
  // A single key that plays its sample to the end whatever happens is percussion (common practice).
  return !(low === high && mode >= 0 && instrument.valueText(mode).toLowerCase() === 'one_shot');
}

/** The root key in force; `undefined` where the text does not say enough to hold it against the sound. */
function rootOf(
  { instrument }: CheckContext,
  inForce: InForce,
  region: number,
  use: SampleUse,
): { key: number; parameter: number } | undefined {
  const parameter = inForce.effective(region, Parameter.pitch_keycenter);
  const ofFile = factsOf(use.state)?.rootKey ?? null;
  if (parameter < 0) {
    // Players differ in whether the file's own root key counts then, and one key or all of them are no sign of a note.
    const [low, high] = [instrument.lowKey[region] as number, instrument.highKey[region] as number];
    return ofFile !== null || low === high || (low === 0 && high === 127)
      ? undefined
      : { key: instrument.rootKey(region), parameter };
  }
  if (instrument.valueText(parameter).toLowerCase() === 'sample') {
    return ofFile === null ? undefined : { key: ofFile, parameter };
  }
  const key = instrument.keyNumber(parameter);
  return key >= 0 && key <= 127 ? { key: instrument.rootKey(region), parameter } : undefined;
}

/**
 * Whether an instrument is one of tuned notes, so that a note off its place is a mistake and not a drum: at least half
 * of its samples have a sure pitch, and of these at least half are where they should be, off by an octave or a semitone,
 * or off by the same as others.
 */
export function isTuned(claims: readonly PitchClaim[], surely: number): boolean {
  const bySample = new Map(claims.map((claim) => [claim.use.path, claim]));
  const sure = [...bySample.values()].filter(({ pitch }) => pitch.confidence >= surely);
  if (sure.length * 2 < bySample.size) return false;
  const deviations = sure.map(({ deviationCents }) => deviationCents).sort((a, b) => a - b);
  const named = deviations.filter(isNamed).length;
  let most = 0;
  let first = 0;
  for (let last = 0; last < deviations.length; last++) {
    while ((deviations[last] as number) - (deviations[first] as number) > agreeingCents) first++;
    most = Math.max(most, last - first + 1);
  }
  return Math.max(named, most) * 2 >= sure.length;
}

function isNamed(cents: number): boolean {
  const away = Math.abs(cents);
  const isNear = (semitones: number) => Math.abs(away - 100 * semitones) <= closeCents;
  return away < agreeingCents || isNear(1) || isNear(12) || isNear(24);
}
