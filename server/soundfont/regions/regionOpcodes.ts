import { defaultOf, Generator, withinRange } from '../generators';
import type { EnvelopeStages } from '../modulations';
import { modulationEnvelope, usualCenterKey, volumeEnvelope } from '../modulations';
import { gainOfCentibels, hertzOfCents, secondsOfTimecents, sfzFallSeconds } from '../units';
import type { FontRegion } from './fontRegions';
import { modulatorOpcodes } from './modulatorOpcodes';
import { OpcodeList } from './opcodeList';
import type { VelocityModulator } from './velocityOpcodes';
import { velocityOpcodes } from './velocityOpcodes';
import { envelopePrefixes } from './velocityTimes';

/** A region with the sample that it plays: its pitch, its loop and its length, frames counted from its first. */
export interface SampledRegion {
  region: FontRegion;
  /** The path of the sample as it is to stand in the text. */
  sample: string;
  rootKey: number;
  /** Cents that sample and region add, the correction of the sample among them. */
  tuneCents: number;
  /** The pan, −500 to 500; 0 for a sample of two channels. */
  pan: number;
  offset: number;
  /** The last frame that is played, where it is not the last of the file. */
  end: number | undefined;
  /** First and last frame of the loop where the region loops. */
  loop: { start: number; end: number } | undefined;
}

/** How the attenuation of files is meant: as the specification says, or by the 0.4 that the first hardware made of it. */
export type AttenuationScale = 1 | 0.4;

/** Says a region in opcodes of SFZ, with remarks on what they say in another way or not at all. */
export function regionOpcodes(played: SampledRegion, scale: AttenuationScale): OpcodeList {
  const { region } = played;
  const list = new OpcodeList();
  list.put('sample', played.sample);
  list.put('lokey', region.lowKey, 0);
  list.put('hikey', region.highKey, 127);
  list.put('lovel', Math.max(1, region.lowVelocity), 1);
  list.put('hivel', region.highVelocity, 127);
  const { additions, velocityToLevel } = modulatorOpcodes(region, list);
  const values = new RegionValues(region, additions);
  pitchOpcodes(played, values, list);
  playbackOpcodes(played, values, list);
  levelOpcodes(played, values, list, scale, velocityToLevel);
  envelopeOpcodes('ampeg', volumeEnvelope, values, list);
  filterOpcodes(values, list);
  for (const prefix of envelopePrefixes(modulationEnvelope, region)) {
    const depth =
      prefix === 'fileg' ? Generator.modulationEnvelopeToCutoff : Generator.modulationEnvelopeToPitch;
    list.put(`${prefix}_depth`, Math.round(values.get(depth)), 0);
    envelopeOpcodes(prefix, modulationEnvelope, values, list);
  }
  lfoOpcodes(values, list);
  return list;
}

/** The values in force in a region, with what modulators add to them at all times. */
class RegionValues {
  readonly region: FontRegion;
  readonly #additions: ReadonlyMap<number, number>;

  constructor(region: FontRegion, additions: ReadonlyMap<number, number>) {
    this.region = region;
    this.#additions = additions;
  }

  get(generator: number): number {
    const own = this.region.generators.get(generator) ?? defaultOf(generator);
    const more = this.#additions.get(generator);
    return more === undefined ? own : withinRange(generator, own + more);
  }

  /** What modulators add at all times. */
  added(generator: number): number {
    return this.#additions.get(generator) ?? 0;
  }

  has(generator: number): boolean {
    return this.get(generator) !== defaultOf(generator);
  }
}

function pitchOpcodes({ rootKey, tuneCents }: SampledRegion, values: RegionValues, list: OpcodeList): void {
  let cents = tuneCents + values.added(Generator.fineTune) + 100 * values.added(Generator.coarseTune);
  const scale = values.get(Generator.scaleTuning);
  const forced = values.get(Generator.forcedKey);
  list.put('pitch_keycenter', rootKey);
  if (forced >= 0) {
    cents += scale * (forced - rootKey);
    list.put('pitch_keytrack', 0);
  } else list.put('pitch_keytrack', scale, 100);
  const semitones = Math.abs(cents) <= 100 ? 0 : Math.trunc(cents / 100);
  list.put('transpose', semitones, 0);
  list.put('tune', cents - 100 * semitones, 0);
}

function playbackOpcodes(
  { region, offset, end, loop }: SampledRegion,
  values: RegionValues,
  list: OpcodeList,
): void {
  list.put('offset', offset, 0);
  if (end !== undefined) list.put('end', end);
  const plays = values.get(Generator.sampleModes);
  list.put('loop_mode', !loop ? 'no_loop' : plays === 3 ? 'loop_sustain' : 'loop_continuous');
  if (loop) {
    list.put('loop_start', loop.start);
    list.put('loop_end', loop.end);
  } else if (plays === 1 || plays === 3)
    list.remark('dropped', 'Left out: a loop that ends before it starts, or lies outside its sample.');
  const group = values.get(Generator.exclusiveClass);
  list.put('group', group, 0);
  list.put('off_by', group, 0);
  if (region.generators.has(Generator.forcedVelocity)) list.put('amp_veltrack', 0);
}

const mostVelocity = 127;

function levelOpcodes(
  { region, pan }: SampledRegion,
  values: RegionValues,
  list: OpcodeList,
  scale: AttenuationScale,
  velocityToLevel: readonly VelocityModulator[],
): void {
  const own = region.generators.get(Generator.attenuation) ?? 0;
  const base = own * scale + values.added(Generator.attenuation);
  const velocity = values.get(Generator.forcedVelocity);
  const attenuation = velocity < 0 ? velocityOpcodes(velocityToLevel, base, list) : base;
  let decibels = -attenuation / 10;
  // The filter lowers all that it lets through by half its resonance (section 8.1.3, initialFilterQ).
  decibels -= values.get(Generator.filterResonance) / 20;
  if (velocity > 0) decibels += 40 * Math.log10(velocity / mostVelocity);
  list.measured('volume', decibels, 0);
  const panned = pan + values.added(Generator.pan);
  list.put('pan', withinRange(Generator.pan, panned) / 5, 0);
  list.put('effect1', values.get(Generator.reverbSend) / 10, 0);
  list.put('effect2', values.get(Generator.chorusSend) / 10, 0);
}

const steepConvexSeconds = 0.01;
/** As much below the peak as this an envelope has nothing left. */
const silentCentibels = 1000;

/** The longest time that SFZ documents for a stage of an envelope; that of a SoundFont is 1.6 % more. */
const mostSeconds = 100;

function envelopeOpcodes(
  prefix: string,
  envelope: EnvelopeStages,
  values: RegionValues,
  list: OpcodeList,
): void {
  const isVolume = envelope === volumeEnvelope;
  const below = values.get(envelope.sustain);
  const sustain = isVolume ? (below >= silentCentibels ? 0 : 100 * gainOfCentibels(below)) : 100 - below / 10;
  const fall = (seconds: number) => (isVolume ? sfzFallSeconds(seconds) : seconds);
  const put = (stage: string, seconds: number) => {
    if (!list.has(`${prefix}_${stage}`))
      list.measured(`${prefix}_${stage}`, Math.min(mostSeconds, seconds), 0);
  };
  put('delay', secondsOfTimecents(values.get(envelope.delay)));
  const attack = secondsOfTimecents(values.get(envelope.attack));
  put('attack', attack);
  if (!isVolume && attack > steepConvexSeconds)
    list.remark(
      'approximated',
      `The attack of the modulation envelope is convex in the SoundFont and straight here.`,
    );
  put('hold', secondsOfTimecents(tracked(envelope.hold, envelope.keyToHold, values, list)));
  const decay = secondsOfTimecents(tracked(envelope.decay, envelope.keyToDecay, values, list));
  if (below > 0) put('decay', fall(decay));
  list.measured(`${prefix}_sustain`, sustain, isVolume ? 100 : 0);
  const release = fall(secondsOfTimecents(values.get(envelope.release)));
  // The format gives the time of the whole way down, SFZ text that from where the release starts.
  put('release', !isVolume && sustain > 0 ? (release * sustain) / 100 : release);
}

/** A time that depends on the key, at the middle of the region. */
function tracked(stage: number, track: number, values: RegionValues, list: OpcodeList): number {
  const perKey = values.get(track);
  const own = values.get(stage);
  if (perKey === 0) return own;
  const { lowKey, highKey } = values.region;
  const middle = (lowKey + highKey) / 2;
  if (highKey > lowKey)
    list.remark(
      'approximated',
      `In the SoundFont this envelope time depends on the key. Here it is that of the middle key of the region, off by a factor of ${(2 ** ((Math.abs(perKey) * (highKey - middle)) / 1200)).toFixed(2)} at its ends.`,
    );
  return withinRange(stage, own + perKey * (usualCenterKey - middle));
}

function filterOpcodes(values: RegionValues, list: OpcodeList): void {
  const moves = ['cutoff_', 'fil_', 'fillfo_'].some((start) =>
    list.entries().some(([name]) => name.startsWith(start)),
  );
  const isUsed =
    moves ||
    [
      Generator.filterCutoff,
      Generator.filterResonance,
      Generator.modulationLfoToCutoff,
      Generator.modulationEnvelopeToCutoff,
    ].some((generator) => values.has(generator));
  if (!isUsed) return;
  list.measured('cutoff', hertzOfCents(values.get(Generator.filterCutoff)));
  list.put('resonance', values.get(Generator.filterResonance) / 10, 0);
}

function lfoOpcodes(values: RegionValues, list: OpcodeList): void {
  const put = (
    prefix: string,
    depthName: string,
    depth: number,
    [delay, frequency]: readonly [number, number],
  ) => {
    list.put(depthName, depth, 0);
    if (!list.entries().some(([name]) => name.startsWith(`${prefix}_`))) return false;
    list.measured(`${prefix}_freq`, hertzOfCents(values.get(frequency)));
    list.measured(`${prefix}_delay`, secondsOfTimecents(values.get(delay)), 0);
    return true;
  };
  const modulation = [Generator.modulationLfoDelay, Generator.modulationLfoFrequency] as const;
  const vibrato = [Generator.vibratoLfoDelay, Generator.vibratoLfoFrequency] as const;
  put('pitchlfo', 'pitchlfo_depth', values.get(Generator.vibratoLfoToPitch), vibrato);
  put('fillfo', 'fillfo_depth', values.get(Generator.modulationLfoToCutoff), modulation);
  put('amplfo', 'amplfo_depth', values.get(Generator.modulationLfoToVolume) / 10, modulation);
  if (put('lfo1', 'lfo1_pitch', values.get(Generator.modulationLfoToPitch), modulation))
    list.put('lfo1_wave', triangle);
  const isHeard = [
    Generator.vibratoLfoToPitch,
    Generator.modulationLfoToCutoff,
    Generator.modulationLfoToVolume,
  ].some((generator) => values.has(generator));
  if (isHeard)
    list.remark(
      'approximated',
      'The LFO is a triangle in the SoundFont; SFZ text does not say which wave it is.',
    );
}

/** The number of the wave of an LFO (the public documentation of the SFZ format, lfoN_wave). */
const triangle = 0;
