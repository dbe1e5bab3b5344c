import { coarsePeriod } from './coarsePeriod';
import { harmonicityOf } from './harmonicity';
import { selfSimilarity } from './selfSimilarity';
import type { SoundingPart } from './soundingPart';
import { soundingPart, windowStarts } from './soundingPart';

/** About where the fundamental of a sound lies. */
export interface CoarsePitch {
  /** What it was found in, one channel, and the part of it that sounds. */
  sound: Float32Array;
  part: SoundingPart;
  hertz: number;
  /** From 0 to 1: how like the sound is to itself a period later, and how much of it is on multiples of the frequency. */
  sureness: number;
}

/** About this long are the windows in which a period is looked for: some periods of the lowest keys (our choice). */
const windowSeconds = 0.093;
/** Frames of a window at least, and windows at most (our choice). */
const shortestWindow = 256;
const mostWindows = 4;
/** How often the fundamental is moved by an octave or a twelfth at the most (our choice). */
const mostMoves = 3;
/** Fundamentals from below the lowest key of a piano, 27.5 Hz, to above its highest, 4186 Hz (our choice). */
const lowestHertz = 22;
const highestHertz = 5000;

/**
 * Where the fundamental of a sound lies, by the mean likeness of the sound to itself ({@link selfSimilarity}) in windows
 * spread over its sounding part; `undefined` for silence, for very short sounds and where nothing repeats. `tilted` is
 * the same sound with what repeats made clearer.
 */
export function coarsePitch(
  sound: Float32Array,
  tilted: Float32Array,
  sampleRate: number,
): CoarsePitch | undefined {
  let length = 2 ** Math.round(Math.log2(windowSeconds * sampleRate));
  const part = soundingPart(sound, sampleRate, 2 * length);
  if (!part) return undefined;
  while (length > part.end - part.start) length /= 2;
  if (length < shortestWindow) return undefined;
  const likeness = selfSimilarity(tilted, windowStarts(part, length, mostWindows), length);
  const longest = Math.min(length / 2, sampleRate / lowestHertz);
  const period = coarsePeriod(likeness, sampleRate / highestHertz, longest);
  if (!period) return undefined;
  let hertz = sampleRate / period.frames;
  let harmonicity = harmonicityOf(sound, sampleRate, part, hertz);
  for (let count = 0; harmonicity.factor !== 1 && count < mostMoves; count++) {
    hertz *= harmonicity.factor;
    harmonicity = harmonicityOf(sound, sampleRate, part, hertz);
  }
  return { sound, part, hertz, sureness: Math.max(0, period.likeness * harmonicity.share ** 2) };
}
