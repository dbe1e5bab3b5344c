import type { CoarsePitch } from './coarsePitch';
import type { Fundamental } from './fundamental';
import { explainedShare, fundamentalOf } from './fundamental';
import { fillWindow, partialsNear } from './partials';
import { windowStarts } from './soundingPart';
import { thinned, thinnedPart, thinningStep } from './thinned';

/** The fundamental in one window, with how much it counts. */
interface Found {
  hertz: number;
  weight: number;
  /** The share of its power that lies on multiples of it. */
  explained: number;
}

/** Windows in which the fundamental is measured, their least length in periods and in seconds, and the partials used (our choice). */
const fewWindows = 9;
const manyWindows = 48;
const leastPeriods = 4;
const leastSeconds = 0.04;
const partialNumbers = [1, 2, 3, 4, 5, 6, 7, 8];
/** How much longer each hop is than the one before, whose result has to be good enough not to lose count of rounds (our choice). */
const hopGrowth = 5;
/** A window that starts from the fundamental of the one before may turn by this many periods at once (our choice). */
const nearPeriods = 4;
/** That one is believed if it lies this close to the coarse one, in cents (our choice). */
const nearCents = 50;
/** Frames that a period keeps: five for the highest partial (our choice). */
const framesInPeriod = 40;
/** Windows agree if they are this close, in cents (our choice). */
const agreeingCents = 80;
/** A note is steady while the windows are this close, in cents (our choice). */
const steadyCents = 4;

/** A fundamental in hertz, with the share of the sound in all windows that agrees on it, from 0 to 1. */
export interface FinePitch {
  hertz: number;
  agreement: number;
}

/**
 * The fundamental of a sound near a coarse one, from the phases of its partials in several windows; `undefined` where
 * the sound is too short for it, or nothing lies near.
 */
export function finePitch(coarse: CoarsePitch, sampleRate: number): FinePitch | undefined {
  const [sound, rate] = thin(coarse, sampleRate);
  let found = fundamentalsOf(sound, rate, fewWindows);
  // Vibrato is faster than a few windows can follow, so its middle takes more of them.
  if (isUnsteady(found)) found = fundamentalsOf(sound, rate, manyWindows);
  const middle = middleOf(found);
  if (middle === undefined) return undefined;
  let cents = 0;
  let nearWeight = 0;
  let explained = 0;
  let weight = 0;
  for (const one of found) {
    weight += one.weight;
    const away = 1200 * Math.log2(one.hertz / middle);
    if (Math.abs(away) > agreeingCents) continue;
    cents += one.weight * away;
    nearWeight += one.weight;
    explained += one.weight * one.explained;
  }
  if (!(nearWeight > 0)) return undefined;
  return { hertz: middle * 2 ** (cents / nearWeight / 1200), agreement: explained / weight };
}

/**
 * The fundamental in each of several windows: in the first followed from the coarse one with growing hops, in others
 * from the one before, which is near enough to start with a longer hop.
 */
function fundamentalsOf({ sound, part, hertz }: CoarsePitch, sampleRate: number, most: number): Found[] {
  const period = sampleRate / hertz;
  const room = Math.floor((part.end - part.start) / (1.5 * period));
  const periods = Math.min(Math.max(leastPeriods, Math.ceil((leastSeconds * sampleRate) / period)), room);
  if (periods < 2) return [];
  const length = Math.round(periods * period);
  const longestHop = Math.floor(length / 2);
  const numbers = partialNumbers.filter((number) => number * hertz < 0.45 * sampleRate);
  const found: Found[] = [];
  const coarse: Fundamental = { hertz, inharmonicity: 0 };
  let near: Fundamental | undefined;
  // Memory for both is asked for once: clearing it away for each window cost a third of all.
  const before = new Float64Array(length);
  const after = new Float64Array(length);
  for (const start of windowStarts(part, length + longestHop, most)) {
    fillWindow(before, sound, start);
    let fundamental: Fundamental | undefined = near ?? coarse;
    let power = 0;
    let explained = 0;
    for (let hop = Math.min(longestHop, Math.round(near ? nearPeriods * period : period)); fundamental; ) {
      fillWindow(after, sound, start + hop);
      const partials = partialsNear({ before, after, hop }, sampleRate, fundamental, numbers);
      fundamental = fundamentalOf(partials, fundamental.hertz);
      power = 0;
      for (const partial of partials) power += partial.power;
      if (fundamental) explained = explainedShare(partials, fundamental);
      if (hop >= longestHop) break;
      hop = Math.min(longestHop, Math.round(hop * hopGrowth));
    }
    if (fundamental) found.push({ hertz: fundamental.hertz, weight: Math.sqrt(power), explained });
    near =
      fundamental && Math.abs(1200 * Math.log2(fundamental.hertz / hertz)) < nearCents
        ? fundamental
        : undefined;
  }
  return found;
}

/** A sound with no more frames than its partials need, and its rate. */
function thin({ sound, part, hertz, sureness }: CoarsePitch, sampleRate: number): [CoarsePitch, number] {
  const step = thinningStep(sampleRate, hertz, framesInPeriod);
  return [{ sound: thinned(sound, step), part: thinnedPart(part, step), hertz, sureness }, sampleRate / step];
}

function isUnsteady(found: readonly Found[]): boolean {
  const all = found.map(({ hertz }) => hertz);
  return 1200 * Math.log2(Math.max(...all) / Math.min(...all)) > steadyCents;
}

/** The value that half of the weight lies below. */
function middleOf(found: readonly Found[]): number | undefined {
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
