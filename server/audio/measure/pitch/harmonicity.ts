import { fillWindow, fourPowersIn } from './partials';
import type { SoundingPart } from './soundingPart';
import { windowStarts } from './soundingPart';
import { thinned, thinnedPart, thinningStep } from './thinned';

/** How well multiples of a frequency explain a sound. */
export interface Harmonicity {
  /** From 0 to 1: little where much sounds between the multiples, or where the lowest of them are all missing. */
  share: number;
  /** What the fundamental is of the frequency: 0.5 where there are partials half-way, 2 or 3 where only such multiples sound. */
  factor: 0.5 | 1 | 2 | 3;
}

/** A window of this many periods tells frequencies a quarter of the fundamental apart, as a raised cosine is two bins wide (our choice). */
const periods = 8;
/** Windows and multiples that are looked at (our choice). */
const mostWindows = 3;
const highestMultiple = 8;
/** Frames that a period keeps: seven for what is looked at above the highest multiple. Low notes are done many times sooner (our choice). */
const framesInPeriod = 64;
/** Multiples that have less than this share of the power are missing (our choice). */
const missingShare = 0.005;
/** A multiple sounds if it has this many times the power of what is beside it (our choice). */
const noiseTimes = 3;

/**
 * Compares what sounds on the multiples of a frequency with what sounds a quarter, a half and three quarters above them.
 * A sound that is too short for a window of eight periods is taken as it is: share 1.
 */
export function harmonicityOf(
  recording: Float32Array,
  recordingRate: number,
  sounding: SoundingPart,
  hertz: number,
): Harmonicity {
  const thinning = thinningStep(recordingRate, hertz, framesInPeriod);
  const sound = thinned(recording, thinning);
  const sampleRate = recordingRate / thinning;
  const part = thinnedPart(sounding, thinning);
  const length = Math.round((periods * sampleRate) / hertz);
  const starts = windowStarts(part, length, mostWindows);
  /** Power on multiples, and a quarter, a half and three quarters above. */
  const powers = [0, 1, 2, 3].map(() => new Float64Array(highestMultiple + 1));
  const frames = new Float64Array(length);
  for (const start of starts) {
    fillWindow(frames, sound, start);
    const step = (Math.PI * hertz) / (2 * sampleRate);
    for (let multiple = 0; multiple <= highestMultiple && multiple * hertz <= 0.45 * sampleRate; multiple++) {
      const four = fourPowersIn(frames, 4 * multiple * step, step);
      for (const [quarter, power] of four.entries()) {
        const number = 4 * multiple + quarter;
        if (number > 0 && (number / 4) * hertz <= 0.45 * sampleRate) powers[quarter][multiple] += power;
      }
    }
  }
  const [whole, low, half, high] = powers as [Float64Array, Float64Array, Float64Array, Float64Array];
  const wholePower = sumOf(whole);
  if (!(wholePower > 0)) return { share: starts.length > 0 ? 0 : 1, factor: 1 };
  const halfPower = sumOf(half);
  const quarterPower = sumOf(low) + sumOf(high);
  const loudHalves = half.filter((power) => power > 5e-4 * wholePower).length;
  const isHalf = halfPower > 2e-3 * wholePower && halfPower > 5 * quarterPower && loudHalves >= 2;
  let share = wholePower / (wholePower + halfPower + quarterPower);
  // A sound without its lowest partials may be many things, chords and bells among them.
  const lowest = whole[1] + whole[2] + whole[3];
  // Noise is as loud a quarter below and above a multiple as on it.
  const clear = whole.map((power, multiple) =>
    power > noiseTimes * Math.max(high[multiple - 1] ?? 0, low[multiple]) ? power : 0,
  );
  const lacksAllBut = (step: number) =>
    sumOf(clear.filter((_, multiple) => multiple % step !== 0)) < missingShare * wholePower;
  const only = lacksAllBut(2) ? 2 : lacksAllBut(3) ? 3 : 1;
  // So small a share of the power is as good as none (our choice).
  if (only > 1 || lowest < 0.02 * wholePower) share /= 2;
  return { share, factor: isHalf ? 0.5 : only };
}

function sumOf(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
}
