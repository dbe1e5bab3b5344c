import type { StereoSound } from '../soundDifference';

/** Peaks of sounds to listen to, in dB to full scale: quiet to start with (our choice). */
const quietDb = -18;
/** A difference is raised by no more than this. */
const mostRaisedDb = 48;
/** Seconds that are kept of each sound, and those of them before the greatest difference. */
const keptSeconds = 2;
const beforeSeconds = 1;
/** Seconds over which a clip fades in and out, so that nothing clicks. */
const fadeSeconds = 0.01;

/** Two sounds and their difference, ready to be heard at a safe level. */
export interface SoundClips {
  a: StereoSound;
  b: StereoSound;
  difference: StereoSound;
  /** Where the clips start in the note. */
  startSeconds: number;
  /** By how much both were made quieter, and the difference louder or quieter. */
  gainDb: number;
  differenceGainDb: number;
}

/** Cuts two sounds to the part around their greatest difference and brings them to a safe level, both by the same gain. */
export function soundClips(a: StereoSound, b: StereoSound, sampleRate: number): SoundClips {
  const frames = Math.max(a.left.length, b.left.length);
  const whole = differenceOf(a, b, frames);
  const kept = Math.round(keptSeconds * sampleRate);
  const latest = Math.max(0, frames - kept);
  const wanted = peakFrame(whole) - Math.round(beforeSeconds * sampleRate);
  const start = Math.max(0, Math.min(latest, wanted));
  const cut = (sound: StereoSound) => part(sound, start, Math.min(kept, frames - start), sampleRate);
  const [one, other] = [cut(a), cut(b)];
  const difference = cut(whole);
  const gainDb = Math.min(0, quietDb - decibels(Math.max(peakOf(one), peakOf(other))));
  const differenceGainDb = Math.min(mostRaisedDb, quietDb - decibels(peakOf(difference)));
  return {
    a: scaled(one, gainDb),
    b: scaled(other, gainDb),
    difference: scaled(difference, differenceGainDb),
    startSeconds: start / sampleRate,
    gainDb,
    differenceGainDb,
  };
}

function differenceOf(a: StereoSound, b: StereoSound, frames: number): StereoSound {
  const side = (one: Float32Array, other: Float32Array) =>
    Float32Array.from({ length: frames }, (_, at) => (other[at] ?? 0) - (one[at] ?? 0));
  return { left: side(a.left, b.left), right: side(a.right, b.right) };
}

function part({ left, right }: StereoSound, start: number, count: number, sampleRate: number): StereoSound {
  const fade = Math.round(fadeSeconds * sampleRate);
  const side = (values: Float32Array) =>
    Float32Array.from({ length: count }, (_, at) => {
      const rise = start === 0 ? 1 : Math.min(1, at / fade);
      return (values[start + at] ?? 0) * rise * Math.min(1, (count - at) / fade);
    });
  return { left: side(left), right: side(right) };
}

function scaled({ left, right }: StereoSound, db: number): StereoSound {
  const gain = 10 ** (db / 20);
  return { left: left.map((value) => gain * value), right: right.map((value) => gain * value) };
}

function peakFrame({ left, right }: StereoSound): number {
  let [peak, found] = [0, 0];
  for (let at = 0; at < left.length; at++) {
    const value = Math.max(Math.abs(left[at]), Math.abs(right[at]));
    if (value > peak) [peak, found] = [value, at];
  }
  return found;
}

/** The greatest magnitude of a sound. */
export function peakOf({ left, right }: StereoSound): number {
  let peak = 0;
  for (const side of [left, right])
    for (let at = 0; at < side.length; at++) peak = Math.max(peak, Math.abs(side[at]));
  return peak;
}

function decibels(value: number): number {
  return value > 0 ? 20 * Math.log10(value) : -144;
}

/** A sound as a WAV file of 16 bits (RIFF WAVE of 1991). */
export function waveOf({ left, right }: StereoSound, sampleRate: number): Uint8Array {
  const frames = left.length;
  const bytes = new Uint8Array(44 + 4 * frames);
  const view = new DataView(bytes.buffer);
  const text = (at: number, word: string) => {
    for (let letter = 0; letter < word.length; letter++) bytes[at + letter] = word.charCodeAt(letter);
  };
  text(0, 'RIFF');
  view.setUint32(4, 36 + 4 * frames, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true);
  view.setUint16(22, 2, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, 4 * sampleRate, true);
  view.setUint16(32, 4, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, 4 * frames, true);
  const whole = (value: number) => Math.max(-32768, Math.min(32767, Math.round(value * 32767)));
  for (let frame = 0; frame < frames; frame++) {
    view.setInt16(44 + 4 * frame, whole(left[frame]), true);
    view.setInt16(46 + 4 * frame, whole(right[frame]), true);
  }
  return bytes;
}
