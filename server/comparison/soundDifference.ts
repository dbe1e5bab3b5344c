import { LoudnessMeter } from '../audio/measure/loudness';
import { measurePitch } from '../audio/measure/pitch/pitch';
import { thirdOctaves } from './thirdOctaves';

/** Two channels of one length, full scale −1..1. */
export interface StereoSound {
  left: Float32Array;
  right: Float32Array;
}

/** A band of a third of an octave in which two sounds differ: the second less the first. */
export interface BandDifference {
  /** The nominal midband frequency. */
  hertz: number;
  levelDb: number;
}

/** How two sounds differ. `levelDb`, `loudnessLu`, `pitchCents`, `startMs` and `lengthMs` are the second less the first. */
export interface SoundDifference {
  /** The greatest difference of a sample and the root mean square of all, in dB to full scale; `null` for none at all. */
  peakDb: number | null;
  rmsDb: number | null;
  levelDb: number;
  /** By momentary loudness (EBU Tech 3341, version 4.0); `null` where one of them is silent. */
  loudnessLu: number | null;
  /** In the bands that either has, from low to high. */
  bands: BandDifference[];
  pitchCents: number;
  startMs: number;
  lengthMs: number;
  /** What is left, in dB below the second sound, once both have the same start and level; `null` for nothing. */
  shapeDb: number | null;
  /** Whether the second is the first with its sides swapped, which is no mono sound. */
  isSwapped: boolean;
}

/** A sound begins and ends where it is so far below its peak (our choice). */
const edgeDb = -60;
/** Seconds from its beginning on by which levels are compared. */
const levelSeconds = 1;
/** Bands so far below the loudest one of a sound do not count, and what lies below counts as this (our choice). */
const faintBandDb = -60;

/** Measures how two sounds of one rate differ; a shorter one counts as silent from its end on. */
export function soundDifference(a: StereoSound, b: StereoSound, sampleRate: number): SoundDifference {
  const { frames, peak, sum } = differenceOf(a, b);
  const edges = [edgesOf(a), edgesOf(b)];
  const ms = (count: number) => (1000 * count) / sampleRate;
  return {
    peakDb: decibels(peak),
    rmsDb: decibels(Math.sqrt(sum / Math.max(1, 2 * frames))),
    levelDb: levelOf(b, edges[1][0], sampleRate) - levelOf(a, edges[0][0], sampleRate),
    loudnessLu: loudnessBetween(a, b, sampleRate),
    bands: bandsBetween(part(a, edges[0][0], sampleRate), part(b, edges[1][0], sampleRate), sampleRate),
    pitchCents: pitchBetween(a, b, sampleRate),
    startMs: ms(edges[1][0] - edges[0][0]),
    lengthMs: ms(edges[1][1] - edges[1][0] - (edges[0][1] - edges[0][0])),
    shapeDb: shapeBetween(a, b, edges[1][0] - edges[0][0]),
    isSwapped: areSwapped(a, b, frames, sum),
  };
}

/** The same, but for sounds of which no sample differs by more than a tolerance in dB: of these the peak alone is measured. */
export function differenceAbove(
  toleranceDb: number,
  a: StereoSound,
  b: StereoSound,
  sampleRate: number,
): SoundDifference {
  const peakDb = decibels(differenceOf(a, b).peak);
  return peakDb !== null && peakDb > toleranceDb
    ? soundDifference(a, b, sampleRate)
    : { ...noDifference, peakDb };
}

const noDifference: SoundDifference = {
  peakDb: null,
  rmsDb: null,
  levelDb: 0,
  loudnessLu: 0,
  bands: [],
  pitchCents: 0,
  startMs: 0,
  lengthMs: 0,
  shapeDb: null,
  isSwapped: false,
};

/** The frames of the longer sound, the greatest difference of a sample and the sum of the squares of all. */
function differenceOf(a: StereoSound, b: StereoSound): { frames: number; peak: number; sum: number } {
  const frames = Math.max(a.left.length, b.left.length);
  let peak = 0;
  let sum = 0;
  for (const side of ['left', 'right'] as const) {
    for (let frame = 0; frame < frames; frame++) {
      const difference = (b[side][frame] ?? 0) - (a[side][frame] ?? 0);
      if (Math.abs(difference) > peak) peak = Math.abs(difference);
      sum += difference * difference;
    }
  }
  return { frames, peak, sum };
}

/** The louder of two levels in dB, `null` being silence. */
export function louder(a: number | null, b: number | null): number | null {
  return a === null ? b : b === null ? a : Math.max(a, b);
}

/** The least that is left of the second when as much of the first as fits is taken away, so many frames later. */
function shapeBetween(a: StereoSound, b: StereoSound, later: number): number | null {
  let [product, energy, otherEnergy] = [0, 0, 0];
  for (const side of ['left', 'right'] as const) {
    const [one, other] = [a[side], b[side]];
    for (let frame = Math.min(0, later); frame < Math.max(other.length, one.length + later); frame++) {
      const first = one[frame - later] ?? 0;
      const second = other[frame] ?? 0;
      product += first * second;
      energy += first * first;
      otherEnergy += second * second;
    }
  }
  const left = Math.max(0, otherEnergy - (energy > 0 ? (product * product) / energy : 0));
  return otherEnergy > 0 && left > 0 ? 10 * Math.log10(left / otherEnergy) : null;
}

/** Of swapped sides the difference is next to nothing against that of the sides as they are (60 dB, our choice). */
function areSwapped(a: StereoSound, b: StereoSound, frames: number, sum: number): boolean {
  let crossed = 0;
  for (let frame = 0; frame < frames; frame++) {
    crossed += ((b.right[frame] ?? 0) - (a.left[frame] ?? 0)) ** 2;
    crossed += ((b.left[frame] ?? 0) - (a.right[frame] ?? 0)) ** 2;
  }
  return sum > 0 && crossed < 1e-6 * sum;
}

function decibels(value: number): number | null {
  return value > 0 ? 20 * Math.log10(value) : null;
}

/** The first frame that is heard and the one behind the last. */
function edgesOf({ left, right }: StereoSound): [first: number, end: number] {
  const loudness = (frame: number) => Math.max(Math.abs(left[frame]), Math.abs(right[frame]));
  let peak = 0;
  for (let frame = 0; frame < left.length; frame++) peak = Math.max(peak, loudness(frame));
  const least = peak * 10 ** (edgeDb / 20);
  let first = 0;
  while (first < left.length && loudness(first) <= least) first++;
  let end = left.length;
  while (end > first && loudness(end - 1) <= least) end--;
  return [first, end];
}

/** Power from the beginning on in dB; that of silence counts as −144 dB, the floor of 24 bits. */
function levelOf({ left, right }: StereoSound, first: number, sampleRate: number): number {
  const end = Math.min(left.length, first + Math.round(levelSeconds * sampleRate));
  let sum = 0;
  for (let frame = first; frame < end; frame++) sum += left[frame] ** 2 + right[frame] ** 2;
  return Math.max(-144, 10 * Math.log10(sum / Math.max(1, end - first) + 1e-30));
}

/** The two channels from a frame on, for as long as levels are compared. */
function part({ left, right }: StereoSound, first: number, sampleRate: number): Float32Array[] {
  const end = first + Math.round(levelSeconds * sampleRate);
  return [left.subarray(first, end), right.subarray(first, end)];
}

function loudnessBetween(a: StereoSound, b: StereoSound, sampleRate: number): number | null {
  const [one, other] = [a, b].map(({ left, right }) => {
    const meter = new LoudnessMeter(sampleRate, 2);
    meter.add([left, right]);
    return meter.result().momentary;
  });
  return one === null || other === null ? null : other - one;
}

/** Differences of bands in which one of two sounds has something. */
function bandsBetween(
  a: readonly Float32Array[],
  b: readonly Float32Array[],
  sampleRate: number,
): BandDifference[] {
  const [one, other] = [thirdOctaves(a, sampleRate), thirdOctaves(b, sampleRate)];
  const loudest = Math.max(...one.map(({ power }) => power), ...other.map(({ power }) => power));
  const least = loudest * 10 ** (faintBandDb / 10);
  return one.flatMap(({ hertz, power }, at) =>
    Math.max(power, other[at].power) <= least || least === 0
      ? []
      : [{ hertz, levelDb: 10 * Math.log10(Math.max(other[at].power, least) / Math.max(power, least)) }],
  );
}

function pitchBetween(a: StereoSound, b: StereoSound, sampleRate: number): number {
  const one = measurePitch(monoOf(a), sampleRate);
  const other = measurePitch(monoOf(b), sampleRate);
  return one && other ? 1200 * Math.log2(other.hertz / one.hertz) : 0;
}

function monoOf({ left, right }: StereoSound): Float32Array {
  return left.map((value, frame) => (value + right[frame]) / 2);
}
