import type { VelocityBand } from './zoneDraft';

/** The amount of the modulator from velocity to level that every instrument has. */
export const usualAmount = 960;
const mostVelocity = 127;

/** dB by which the format's own curve is below its greatest level at a velocity: 40·log10(127/velocity). */
function curveDb(velocity: number): number {
  return 40 * Math.log10(mostVelocity / velocity);
}

/** How loud a region is at a velocity from 1 to 127, as a factor. */
export type VelocityGain = (velocity: number) => number;

/**
 * The gain by velocity of `amp_veltrack` in per cent: all of (v/127)², a share of it, or with a negative value the way
 * round. (The public documentation of the SFZ format, amp_veltrack; between the stated values common practice.)
 */
export function trackedGain(percent: number): VelocityGain {
  const track = Math.max(-100, Math.min(100, percent)) / 100;
  return (velocity) => {
    const curve = (velocity / mostVelocity) ** 2;
    return track >= 0 ? 1 - track + track * curve : 1 + track * curve;
  };
}

/** The gain by velocity of points of `amp_velcurve_N`, straight between them, 0 at 0 and 1 at 127 where nothing is said. */
export function curveGain(points: ReadonlyMap<number, number>): VelocityGain {
  const all = new Map([[0, 0], [mostVelocity, 1], ...points]);
  const sorted = [...all].sort(([a], [b]) => a - b);
  return (velocity) => {
    const above = sorted.findIndex(([at]) => at >= velocity);
    const [highAt, high] = sorted[above] ?? [mostVelocity, 1];
    const [lowAt, low] = sorted[above - 1] ?? [highAt, high];
    return highAt === lowAt ? high : low + ((high - low) * (velocity - lowAt)) / (highAt - lowAt);
  };
}

/** How well a formula stands for a curve. */
export interface FittedBands {
  bands: VelocityBand[];
  /** dB by which it is off at the most. */
  errorDb: number;
}

/** Lowest velocity at which a share of the usual curve is compared; softer ones are hardly played. */
const comparedFrom = 20;

/**
 * The amount that stands best for `amp_veltrack` between 0 and 100 %: least greatest error at velocities 20 to 127. The
 * format knows powers of the velocity alone.
 */
export function amountFor(percent: number): { amount: number; errorDb: number } {
  if (percent >= 100) return { amount: usualAmount, errorDb: 0 };
  const gain = trackedGain(percent);
  const errorOf = (amount: number) => {
    let worst = 0;
    for (let velocity = comparedFrom; velocity <= mostVelocity; velocity++) {
      const wanted = 20 * Math.log10(gain(velocity));
      worst = Math.max(worst, Math.abs(wanted + (amount / usualAmount) * curveDb(velocity)));
    }
    return worst;
  };
  let [low, high] = [0, usualAmount];
  while (high - low > 2) {
    const [left, right] = [low + Math.floor((high - low) / 3), high - Math.floor((high - low) / 3)];
    if (errorOf(left) <= errorOf(right)) high = right;
    else low = left;
  }
  let amount = low;
  for (let one = low; one <= high; one++) if (errorOf(one) < errorOf(amount)) amount = one;
  return { amount, errorDb: errorOf(amount) };
}

/** Below this a region counts as silent. */
const silentDb = -96;
/** As much attenuation as a band may start from: the format holds 144 dB with all that comes to it. */
const mostBaseDb = 100;
/** As many times as steep as the usual curve a band may be: amounts are numbers of 16 bits. */
const mostSlope = 32767 / usualAmount;
/** Bands that one region is split into at the most. */
const mostBands = 16;
/** dB that a band may be off at first; more where there would be too many bands. */
const firstTolerance = 0.5;

/**
 * Splits velocities into bands in which a power of the velocity stands for a gain, and velocities at which nothing sounds
 * off. The gain is at most 1.
 */
export function fitBands(gain: VelocityGain, low: number, high: number): FittedBands {
  const levels: number[] = [];
  for (let velocity = 0; velocity <= mostVelocity; velocity++)
    levels.push(velocity === 0 ? silentDb : Math.max(silentDb, 20 * Math.log10(gain(velocity))));
  for (let tolerance = firstTolerance; ; tolerance *= 1.2) {
    const fitted = bandsWithin(levels, low, high, tolerance);
    if (fitted.bands.length <= mostBands || tolerance > 100) return fitted;
  }
}

function bandsWithin(levels: readonly number[], low: number, high: number, tolerance: number): FittedBands {
  const bands: VelocityBand[] = [];
  let errorDb = 0;
  for (let start = low; start <= high; ) {
    if ((levels[start] as number) <= silentDb) {
      start++;
      continue;
    }
    let best = fitBand(levels, start, start);
    for (let end = start + 1; end <= high && (levels[end] as number) > silentDb; end++) {
      const next = fitBand(levels, start, end);
      if (next.errorDb > tolerance) break;
      best = next;
    }
    bands.push(best.band);
    errorDb = Math.max(errorDb, best.errorDb);
    start = best.band.high + 1;
  }
  return { bands, errorDb };
}

/** The power and level that stand for the levels of a band, never louder at velocity 127 than the sample itself. */
function fitBand(
  levels: readonly number[],
  low: number,
  high: number,
): { band: VelocityBand; errorDb: number } {
  const first = -(levels[low] as number);
  const last = -(levels[high] as number);
  const [firstCurve, lastCurve] = [curveDb(low), curveDb(high)];
  const slope = low === high ? 0 : (first - last) / (firstCurve - lastCurve);
  const lines: [slope: number, base: number][] = [
    [slope, last - slope * lastCurve],
    [0, (first + last) / 2],
    [lastCurve > 0 ? (first / firstCurve + last / lastCurve) / 2 : first / (firstCurve || 1), 0],
  ];
  const judged = lines
    .filter(([one, base]) => base >= -1e-9 && base <= mostBaseDb && Math.abs(one) <= mostSlope)
    .map(([one, base]) => {
      let worst = 0;
      for (let velocity = low; velocity <= high; velocity++)
        worst = Math.max(worst, Math.abs(base + one * curveDb(velocity) + (levels[velocity] as number)));
      return { slope: one, base, errorDb: worst };
    })
    .sort((a, b) => a.errorDb - b.errorDb);
  const best = judged[0] as (typeof judged)[number];
  const band = {
    low,
    high,
    attenuation: Math.round(10 * Math.max(0, best.base)),
    amount: Math.round(usualAmount * best.slope),
  };
  return { band, errorDb: best.errorDb };
}
