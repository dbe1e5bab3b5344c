import { measurePitch } from '../../audio/measure/pitch/pitch';
import type { ThirdOctave } from '../thirdOctaves';
import { thirdOctaves } from '../thirdOctaves';
import { decibels, LevelTrack } from './levelTrack';

/** Seconds before a note at which its stretch of sound begins. */
export const beforeSeconds = 0.06;
/** A pitch that is less sure counts as none (our choice). */
const leastConfidence = 0.7;
/** Seconds over which level and sides are taken, and those at the end of the hold. */
const bodySeconds = 0.5;
const endSeconds = 0.1;
/** A note begins where it has come within so much of the peak of its first tenth of a second. */
const beginDb = -20;
const attackSeconds = 0.1;
/** A release is timed by its fall through so much, a sound ends where it is so far below its peak. */
const releaseFallDb = 20;
const endDb = -40;

/** What is measured of one note in a stretch of sound. Levels are in dB to full scale. */
export interface NoteMeasures {
  /** Seconds from the start of the stretch to where it begins. */
  onsetSeconds: number;
  /** The level just before it: of noise, or of what rings on from the note before. */
  beforeDb: number;
  levelDb: number;
  /** The level of the left channel above that of the right; NaN where there is but one. */
  sidesDb: number;
  /** At the end of the hold. */
  heldDb: number;
  hertz: number | null;
  /** Seconds from the beginning until the sound is within 6 dB of its loudest in the hold. */
  attackSeconds: number;
  /** Seconds that it takes from the release to fall by 20 dB; `null` where it does not, or nothing sounds any more. */
  releaseSeconds: number | null;
  /** Seconds from the beginning to the end. */
  lengthSeconds: number;
  /** Of the first second of the hold, and of its last part. */
  bands: ThirdOctave[];
  lateBands: ThirdOctave[];
}

/** A stretch of sound that begins {@link beforeSeconds} before a note. */
export interface NoteSound {
  left: Float32Array;
  right: Float32Array;
  sampleRate: number;
  /** Seconds for which the key is held. */
  holdSeconds: number;
}

/** Measures one note. */
export function measureNote(sound: NoteSound): NoteMeasures {
  const { left, right, sampleRate, holdSeconds } = sound;
  const onset = onsetFrame(sound);
  const frames = (seconds: number) => Math.round(seconds * sampleRate);
  const level = (from: number, to: number) => levelBetween(left, right, from, to);
  const hold = onset + frames(holdSeconds);
  const body = Math.min(hold, onset + frames(bodySeconds));
  const heldFrom = Math.max(onset, hold - frames(Math.min(endSeconds, holdSeconds / 3)));
  const early = [left, right].map((side) => side.subarray(onset, Math.min(hold, onset + frames(1))));
  const late = [left, right].map((side) => side.subarray(onset + frames(0.6 * holdSeconds), hold));
  const track = trackOf(sound, onset);
  const beforeDb = level(0, Math.max(1, frames(beforeSeconds / 2)));
  return {
    onsetSeconds: onset / sampleRate,
    beforeDb,
    levelDb: level(onset, body),
    sidesDb: levelBetween(left, left, onset, body) - levelBetween(right, right, onset, body),
    heldDb: level(heldFrom, hold),
    hertz: pitchOf(early, sampleRate),
    attackSeconds: attackOf(track, holdSeconds),
    releaseSeconds: releaseOf(track, holdSeconds, beforeDb),
    lengthSeconds: lengthOf(track, beforeDb),
    bands: thirdOctaves(early, sampleRate),
    lateBands: thirdOctaves(late, sampleRate),
  };
}

/** The first frame at which a note is there. */
function onsetFrame({ left, right, sampleRate }: NoteSound): number {
  const nominal = Math.round(beforeSeconds * sampleRate);
  const end = Math.min(left.length, nominal + Math.round(attackSeconds * sampleRate));
  let peak = 0;
  for (let frame = 0; frame < end; frame++)
    peak = Math.max(peak, Math.abs(left[frame]), Math.abs(right[frame]));
  const least = peak * 10 ** (beginDb / 20);
  // What rings on from the note before is no beginning.
  let frame = Math.max(0, nominal - Math.round(0.03 * sampleRate));
  while (frame < end && Math.max(Math.abs(left[frame]), Math.abs(right[frame])) < least) frame++;
  return frame < end ? frame : nominal;
}

function levelBetween(left: Float32Array, right: Float32Array, from: number, to: number): number {
  const end = Math.min(to, left.length);
  let sum = 0;
  for (let frame = from; frame < end; frame++) sum += left[frame] ** 2 + right[frame] ** 2;
  return decibels(end > from ? sum / (2 * (end - from)) : 0);
}

function pitchOf([left, right]: readonly Float32Array[], sampleRate: number): number | null {
  const louder = energyOf(left) >= energyOf(right) ? left : right;
  const pitch = measurePitch(louder, sampleRate);
  return pitch && pitch.confidence >= leastConfidence ? pitch.hertz : null;
}

function energyOf(values: Float32Array): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}

interface Track {
  levels: Float32Array;
  step: number;
}

function trackOf({ left, right, sampleRate }: NoteSound, onset: number): Track {
  const track = new LevelTrack(sampleRate);
  track.add(left.subarray(onset), right.subarray(onset), left.length - onset);
  return { levels: track.levels(), step: track.secondsPerStep };
}

function attackOf({ levels, step }: Track, holdSeconds: number): number {
  const held = levels.subarray(0, Math.max(1, Math.round(holdSeconds / step)));
  const most = held.reduce((found, level) => Math.max(found, level), Number.NEGATIVE_INFINITY);
  return (
    Math.max(
      0,
      held.findIndex((level) => level >= most - 6),
    ) * step
  );
}

function releaseOf({ levels, step }: Track, holdSeconds: number, beforeDb: number): number | null {
  const from = Math.round(holdSeconds / step);
  const held = levels.subarray(Math.max(0, from - 10), from);
  const level = held.reduce((sum, one) => sum + one, 0) / Math.max(1, held.length);
  if (!(level - releaseFallDb > beforeDb + 6) || level < -90) return null;
  for (let at = from; at < levels.length; at++)
    if (levels[at] < level - releaseFallDb) return (at - from) * step;
  return null;
}

function lengthOf({ levels, step }: Track, beforeDb: number): number {
  const most = levels.reduce((found, level) => Math.max(found, level), Number.NEGATIVE_INFINITY);
  const least = Math.max(most + endDb, beforeDb + 6);
  return (levels.findLastIndex((level) => level >= least) + 1) * step;
}
