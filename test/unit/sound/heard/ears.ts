import type { PlayOptions, Rendered, TestSample } from '../playing';
import { constant, db, sine } from '../playing';

/** The output rate of all tests that hear opcodes. */
export const rate = 48000;

const frames = rate;
const ramp = Float32Array.from({ length: frames }, (_, at) => at / frames);

/** What the texts of the tests play. All are at 48 kHz and sound as they are at key 60. */
export const samples: Readonly<Record<string, TestSample>> = {
  /** Its sound is the gain. */
  'one.wav': constant(2),
  /** Its values tell the frame. */
  'ramp.wav': { channels: [ramp], rate },
  'tone.wav': { channels: [sine(1000, 2)], rate },
  'high.wav': { channels: [sine(4000, 2)], rate },
  /** Both sides alike, and opposite. */
  'both.wav': { channels: [new Float32Array(2 * rate).fill(1), new Float32Array(2 * rate).fill(1)], rate },
  'side.wav': { channels: [new Float32Array(2 * rate).fill(1), new Float32Array(2 * rate).fill(-1)], rate },
  'short.wav': { channels: [new Float32Array(rate / 10).fill(1)], rate },
};

/** The test of an opcode by its sound. Without the opcode the same measure has to give something else. */
export interface Heard {
  /** The rest of the region. */
  base: string;
  /** The opcode, or several that only mean something together. */
  opcode: string;
  /** Headers before the region. */
  before?: string;
  seconds?: number;
  options?: PlayOptions;
  /** What is measured in the sound, and what it has to be, by a published formula or by the text itself. */
  hear: (sound: Rendered) => number;
  is: number;
  within: number;
  /** Played so many times with seeds from 1 on; the greatest value counts. */
  seeds?: number;
}

export type HeardTable = Readonly<Record<string, Heard | readonly Heard[]>>;

/** The level of the left channel at a time in dB. */
export const levelAt =
  (seconds: number) =>
  ({ left }: Rendered): number =>
    db(left[Math.round(seconds * rate)]);

/** The value of the left channel at a time. */
export const valueAt =
  (seconds: number) =>
  ({ left }: Rendered): number =>
    left[Math.round(seconds * rate)];

/** The pan of a mono sample, −100..100, from the levels of both sides. */
export const panAt =
  (seconds: number) =>
  ({ left, right }: Rendered): number => {
    const at = Math.round(seconds * rate);
    return (Math.atan2(right[at], left[at]) / (Math.PI / 2)) * 200 - 100;
  };

/** The frequency around a time: a sine keeps to x[n − 1] + x[n + 1] = 2·cos w · x[n]. */
function hertzAt({ left }: Rendered, seconds: number, windowFrames = 240): number {
  const start = Math.round(seconds * rate) - windowFrames / 2;
  let product = 0;
  let energy = 0;
  for (let at = Math.max(1, start); at < start + windowFrames; at++) {
    product += left[at] * (left[at - 1] + left[at + 1]);
    energy += 2 * left[at] * left[at];
  }
  return (Math.acos(Math.max(-1, Math.min(1, product / energy))) * rate) / (2 * Math.PI);
}

/** Cents of a tone above a frequency, around a time. */
export const centsAt =
  (seconds: number, hertz = 1000) =>
  (sound: Rendered): number =>
    1200 * Math.log2(hertzAt(sound, seconds) / hertz);

/** The amplitude of a sine that lasts whole periods of a window around a time. */
function toneLevel({ left }: Rendered, seconds: number, windowSeconds = 0.002): number {
  const start = Math.round((seconds - windowSeconds / 2) * rate);
  const end = start + Math.round(windowSeconds * rate);
  let energy = 0;
  for (let at = start; at < end; at++) energy += left[at] ** 2;
  return Math.sqrt((2 * energy) / (end - start));
}

/** The gain of a tone around a time in dB. */
export const toneDb =
  (seconds: number, windowSeconds = 0.01) =>
  (sound: Rendered): number =>
    db(toneLevel(sound, seconds, windowSeconds));

/**
 * The cutoff of `lpf_1p` from what is left of a tone, in cents above 1 kHz: |H|² = 1 / (1 + (tan(πf/fs) / tan(πfc/fs))²), the
 * bilinear transform of a pole.
 */
export const cutoffCentsAt =
  (seconds: number, tone: number) =>
  (sound: Rendered): number => {
    const gain = toneLevel(sound, seconds);
    const warped = (Math.tan((Math.PI * tone) / rate) * gain) / Math.sqrt(1 - gain * gain);
    return 1200 * Math.log2((Math.atan(warped) * rate) / Math.PI / 1000);
  };

/** The time at which the level first is at or above a value. */
export const firstAbove =
  (value: number) =>
  ({ left }: Rendered): number =>
    left.findIndex((one) => Math.abs(one) >= value) / rate;

/** The time behind which nothing sounds any more. */
export function soundEnd({ left, right }: Rendered): number {
  let at = left.length;
  while (at > 0 && left[at - 1] === 0 && right[at - 1] === 0) at--;
  return at / rate;
}

/** |H| in dB of a band of the W3C's equaliser (Web Audio API, BiquadFilterNode, peaking) with a bandwidth in octaves. */
export function peakingDb(at: number, hertz: number, bandwidth: number, gainDb: number): number {
  const w = (2 * Math.PI * hertz) / rate;
  const root = 10 ** (gainDb / 40);
  const alpha = Math.sin(w) * Math.sinh((Math.LN2 / 2) * bandwidth * (w / Math.sin(w)));
  const b = [1 + alpha * root, -2 * Math.cos(w), 1 - alpha * root];
  const a = [1 + alpha / root, -2 * Math.cos(w), 1 - alpha / root];
  const z = (2 * Math.PI * at) / rate;
  const magnitude = ([c0, c1, c2]: number[]) =>
    Math.hypot(c0 + c1 * Math.cos(z) + c2 * Math.cos(2 * z), c1 * Math.sin(z) + c2 * Math.sin(2 * z));
  return db(magnitude(b) / magnitude(a));
}
