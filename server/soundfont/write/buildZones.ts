import type { Modulator } from '../font';
import { Generator, withinRange } from '../generators';
import type { AttenuationScale } from '../regions/regionOpcodes';
import type { WrittenZone } from './fontParts';
import type { PlannedSample } from './samplePlan';
import { usualAmount } from './velocityLevel';
import type { KeyBand, VelocityBand, ZoneDraft } from './zoneDraft';
import { velocityModulator } from './zoneLevel';
import type { KeyLine } from './zoneModulators';
import { keyLines } from './zoneModulators';

/** What a zone is built from beside its draft. */
export interface ZoneContext {
  sample: PlannedSample;
  /** Positions of the sample, left before right. */
  positions: readonly number[];
  /** The level that is written as no attenuation. */
  topDb: number;
  scale: AttenuationScale;
  /** Keeps one of so many frames of the sample. */
  step: number;
}

/** The greatest level of a draft in dB: what is written as no attenuation must not be below it. */
export function topLevel({ levelDb, keys, keyTrack }: ZoneDraft): number {
  const tracked = (key: number) => (keyTrack ? keyTrack.perKeyDb * (key - keyTrack.center) : 0);
  return (
    levelDb + Math.max(...keys.map((band) => band.levelDb + Math.max(tracked(band.low), tracked(band.high))))
  );
}

/** A side of a sample: where it stands, −500 to 500, and what it loses. */
interface Side {
  position: number;
  pan: number;
  lossDb: number;
}

/** The zones of a draft: one for each band of keys and velocities and each side. */
export function buildZones(draft: ZoneDraft, context: ZoneContext): WrittenZone[] {
  const zones: WrittenZone[] = [];
  const sides = sidesOf(draft, context.positions);
  for (const keys of draft.keys)
    for (const velocities of draft.velocities)
      for (const side of sides) zones.push(buildZone(draft, keys, velocities, side, context));
  return zones;
}

function buildZone(
  draft: ZoneDraft,
  keys: KeyBand,
  velocities: VelocityBand,
  { position, pan, lossDb }: Side,
  { sample, topDb, scale, step }: ZoneContext,
): WrittenZone {
  const generators = new Map(draft.generators);
  const put = (operator: number, value: number) => generators.set(operator, value);
  const track = draft.keyTrack;
  const plain = 10 * (topDb - draft.levelDb - keys.levelDb + lossDb) + velocities.attenuation;
  const line = track && keyLine(plain, track);
  const centibels = Math.round((plain + (line?.base ?? 0)) / scale);
  put(Generator.attenuation, withinRange(Generator.attenuation, centibels));
  put(Generator.pan, withinRange(Generator.pan, Math.round(pan)));
  if (draft.rootKey !== sample.rootKey) put(Generator.rootKey, draft.rootKey);
  putPlaces(draft, sample, step, put);
  const modulators = [...draft.modulators];
  if (velocities.amount !== usualAmount) modulators.push(velocityModulator(velocities.amount));
  if (line) modulators.push(keyModulator(line));
  return {
    lowKey: keys.low,
    highKey: keys.high,
    lowVelocity: velocities.low,
    highVelocity: velocities.high,
    generators,
    modulators,
    target: position,
  };
}

const centibelsInDb = 10;

/** The line from keys to attenuation: from the middle both ways where that starts at no less than nothing, else from key 0. */
function keyLine(plain: number, { perKeyDb, center }: NonNullable<ZoneDraft['keyTrack']>): KeyLine {
  const [rising, both] = keyLines(-perKeyDb * centibelsInDb, center);
  return plain + both.base >= 0 ? both : rising;
}

function keyModulator({ source, amount }: KeyLine): Modulator {
  return { source, destination: Generator.attenuation, amount, amountSource: 0, transform: 0 };
}

const coarse = 32768;

/** Where playing starts and ends, and whether it loops. */
function putPlaces(
  { sample: request }: ZoneDraft,
  { layout }: PlannedSample,
  step: number,
  put: (operator: number, value: number) => void,
): void {
  const frames = layout.frames / step;
  const loopEnd = layout.loop ? layout.loop.end / step : frames;
  const offset = request.offset === 0 ? 0 : Math.round((request.offset + layout.lead) / step);
  putOffset(Math.min(offset, loopEnd - 1), Generator.startOffset, Generator.startCoarseOffset, put);
  if (request.end !== undefined) {
    const end = Math.round((request.end + 1 + layout.lead) / step);
    putOffset(Math.min(0, end - frames), Generator.endOffset, Generator.endCoarseOffset, put);
  }
  if (request.loop) put(Generator.sampleModes, request.mode === 'untilRelease' ? 3 : 1);
}

function putOffset(
  frames: number,
  fine: number,
  big: number,
  put: (operator: number, value: number) => void,
): void {
  if (frames === 0) return;
  put(fine, frames % coarse);
  put(big, Math.trunc(frames / coarse));
}

const hard = 500;
/** What two sides in the middle add up to more than their mean. */
const middleGainDb = 20 * Math.log10(Math.SQRT2);

/**
 * The sides of a region: one where its sample is mono. `pan` of a stereo sample lowers the other side; width and position
 * bring the sides together, which a SoundFont can only do by placing them.
 */
function sidesOf({ pan, width, position }: ZoneDraft, positions: readonly number[]): Side[] {
  const [left, right] = positions as [number, number | undefined];
  if (right === undefined) return [{ position: left, pan: (hard * (pan || position)) / 100, lossDb: 0 }];
  const part = width / 100;
  const shift = (hard * position) / 100;
  const loss = middleGainDb * (1 - Math.abs(part));
  const other = -20 * Math.log10(Math.max(1e-7, Math.cos((Math.abs(pan) / 100) * (Math.PI / 2))));
  return [
    { position: left, pan: -hard * part + shift, lossDb: loss + (pan > 0 ? other : 0) },
    { position: right, pan: hard * part + shift, lossDb: loss + (pan < 0 ? other : 0) },
  ];
}
