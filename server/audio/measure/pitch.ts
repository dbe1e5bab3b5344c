import type { MeasuredPitch } from '../../model/samples';
import { coarsePeriod } from './coarsePeriod';
import type { Fundamental } from './fundamental';
import { fundamentalOf } from './fundamental';
import { harmonicityOf } from './harmonicity';
import { partialsNear } from './partials';
import { selfSimilarity } from './selfSimilarity';
import type { SoundingPart } from './soundingPart';
import { soundingPart, spread } from './soundingPart';

/** Sound above this rate is thinned out first: fundamentals lie far lower. */
const highestRate = 64_000;
/** About this long are the windows in which a period is looked for: some periods of the lowest keys. */
const windowSeconds = 0.093;
const shortestWindow = 256;
const mostWindows = 4;
/** How often the fundamental is moved by an octave at the most. */
const mostOctaves = 2;
const lowestHertz = 22;
const highestHertz = 5000;
/** Windows in which the fundamental is measured, their least length in periods and in seconds, and the partials used. */
const fewFineWindows = 9;
const manyFineWindows = 48;
const finePeriods = 4;
const fineSeconds = 0.04;
const finePartials = [1, 2, 3, 4, 5, 6, 7, 8];
/** How much longer each hop is than the one before, whose result has to be good enough not to lose count of rounds. */
const hopGrowth = 5;
/** Windows agree if they are this close, in cents. */
const agreeingCents = 80;
/** A note is steady while the windows are this close, in cents. */
const steadyCents = 4;

/**
 * The pitch of a recorded note, after its attack, from windows spread over the sound; `null` for silence, for very
 * short sounds and where nothing repeats. A period is looked for in the mean likeness of the sound to itself
 * ({@link selfSimilarity}); its fundamental is then measured from the phases of its partials. `samples` is one channel,
 * a second or two of it. The confidence is high where the sound repeats itself exactly and all windows agree; noise,
 * and bars and drums whose partials are no multiples, answer with a low one.
 */
export function measurePitch(samples: Float32Array, sampleRate: number): MeasuredPitch | null {
  if (!(sampleRate >= 2000)) return null;
  const step = Math.ceil(sampleRate / highestRate);
  const rate = sampleRate / step;
  const sound = centred(step > 1 ? thinned(samples, step) : samples);
  let length = 2 ** Math.round(Math.log2(windowSeconds * rate));
  const part = soundingPart(sound, rate, 2 * length);
  if (!part) return null;
  while (length > part.end - part.start) length /= 2;
  if (length < shortestWindow) return null;
  const likeness = selfSimilarity(softened(sound, rate), spread(part, length, mostWindows), length);
  const coarse = coarsePeriod(likeness, rate / highestHertz, Math.min(length / 2, rate / lowestHertz));
  if (!coarse) return null;
  return refined(sound, rate, part, { hertz: rate / coarse.frames, likeness: coarse.likeness });
}

function refined(
  sound: Float32Array,
  rate: number,
  part: SoundingPart,
  coarse: { hertz: number; likeness: number },
): MeasuredPitch | null {
  let { hertz } = coarse;
  let harmonicity = harmonicityOf(sound, rate, part, hertz);
  for (let count = 0; harmonicity.octave !== 1 && count < mostOctaves; count++) {
    hertz *= harmonicity.octave;
    harmonicity = harmonicityOf(sound, rate, part, hertz);
  }
  let found = fundamentalsOf(sound, rate, part, hertz, fewFineWindows);
  // Vibrato is faster than a few windows can follow, so its middle takes more of them.
  if (isUnsteady(found)) found = fundamentalsOf(sound, rate, part, hertz, manyFineWindows);
  const middle = middleOf(found);
  if (middle === undefined) return null;
  let cents = 0;
  let nearWeight = 0;
  let weight = 0;
  for (const one of found) {
    weight += one.weight;
    const away = 1200 * Math.log2(one.hertz / middle);
    if (Math.abs(away) > agreeingCents) continue;
    cents += one.weight * away;
    nearWeight += one.weight;
  }
  if (!(nearWeight > 0)) return null;
  const confidence = (coarse.likeness * harmonicity.share ** 2 * nearWeight) / weight;
  return pitchOf(middle * 2 ** (cents / nearWeight / 1200), Math.max(0, Math.min(1, confidence)));
}

/** The fundamental in each of several windows, each followed from the coarse one with growing hops. */
function fundamentalsOf(
  sound: Float32Array,
  rate: number,
  part: SoundingPart,
  coarseHertz: number,
  mostWindows: number,
): { hertz: number; weight: number }[] {
  const period = rate / coarseHertz;
  const most = Math.floor((part.end - part.start) / (1.5 * period));
  const periods = Math.min(Math.max(finePeriods, Math.ceil((fineSeconds * rate) / period)), most);
  if (periods < 2) return [];
  const length = Math.round(periods * period);
  const longestHop = Math.floor(length / 2);
  const numbers = finePartials.filter((number) => number * coarseHertz < 0.45 * rate);
  const found: { hertz: number; weight: number }[] = [];
  for (const start of spread(part, length + longestHop, mostWindows)) {
    let fundamental: Fundamental | undefined = { hertz: coarseHertz, inharmonicity: 0 };
    let power = 0;
    for (let hop = Math.min(longestHop, Math.round(period)); fundamental; ) {
      const partials = partialsNear(sound, rate, fundamental, numbers, { start, length, hop });
      fundamental = fundamentalOf(partials, fundamental.hertz);
      power = 0;
      for (const partial of partials) power += partial.power;
      if (hop >= longestHop) break;
      hop = Math.min(longestHop, Math.round(hop * hopGrowth));
    }
    if (fundamental) found.push({ hertz: fundamental.hertz, weight: Math.sqrt(power) });
  }
  return found;
}

function isUnsteady(found: readonly { hertz: number }[]): boolean {
  const all = found.map(({ hertz }) => hertz);
  return 1200 * Math.log2(Math.max(...all) / Math.min(...all)) > steadyCents;
}

/** The value that half of the weight lies below. */
function middleOf(found: readonly { hertz: number; weight: number }[]): number | undefined {
  const sorted = [...found].sort((a, b) => a.hertz - b.hertz);
  let weight = 0;
  for (const one of sorted) weight += one.weight;
  let below = 0;
  for (const one of sorted) {
    below += one.weight;
    if (below >= weight / 2) return one.hertz;
  }
  return undefined;
}

/** A pitch with its nearest key and the cents above it (equal temperament, A4 = key 69 = 440 Hz, ISO 16). */
export function pitchOf(hertz: number, confidence: number): MeasuredPitch {
  const place = 69 + 12 * Math.log2(hertz / 440);
  const key = Math.max(0, Math.min(127, Math.round(place)));
  return { hertz, key, cents: 100 * (place - key), confidence };
}

function centred(samples: Float32Array): Float32Array {
  let sum = 0;
  for (const value of samples) sum += value;
  const mean = sum / Math.max(1, samples.length);
  const centred = new Float32Array(samples.length);
  for (let frame = 0; frame < samples.length; frame++) centred[frame] = (samples[frame] as number) - mean;
  return centred;
}

/** Every `step` frames as their mean. */
function thinned(samples: Float32Array, step: number): Float32Array {
  const thin = new Float32Array(Math.floor(samples.length / step));
  for (let frame = 0; frame < thin.length; frame++) {
    let sum = 0;
    for (let at = frame * step; at < (frame + 1) * step; at++) sum += samples[at] as number;
    thin[frame] = sum / step;
  }
  return thin;
}

/** Below this frequency a sound is taken whole when a period is looked for; above it falls by 6 dB an octave. */
const softenedAbove = 1500;

/** High partials are the least harmonic, and noise lies high, so they get less say in what repeats. */
function softened(samples: Float32Array, rate: number): Float32Array {
  const share = 1 - Math.exp((-2 * Math.PI * softenedAbove) / rate);
  const soft = new Float32Array(samples.length);
  let value = 0;
  for (let frame = 0; frame < samples.length; frame++) {
    value += share * ((samples[frame] as number) - value);
    soft[frame] = value;
  }
  return soft;
}
