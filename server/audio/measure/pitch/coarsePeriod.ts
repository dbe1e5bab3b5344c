/** A period in frames with how alike the sound is to itself one period later, up to 1. */
export interface CoarsePeriod {
  frames: number;
  likeness: number;
}

/** A period counts if the likeness is at least this share of the greatest; McLeod and Wyvill advise 0.8 to 1, of which this is our choice. */
const threshold = 0.9;

/**
 * The shortest period, in frames, at which a sound is about as much like itself as at any: of the highest peak in each
 * hump of the likeness that lies between zeros, the first that comes near the highest of all (McLeod and Wyvill, ICMC
 * 2005). Peaks are looked for up to `longest` and refined by a parabola through three points. `undefined` where there
 * is no peak.
 */
export function coarsePeriod(
  likeness: Float64Array,
  shortest: number,
  longest: number,
): CoarsePeriod | undefined {
  const peaks: CoarsePeriod[] = [];
  const last = Math.min(Math.floor(longest), likeness.length - 2);
  let at = 1;
  while (at <= last && likeness[at] > 0) at++;
  while (at <= last) {
    while (at <= last && likeness[at] <= 0) at++;
    let best = -1;
    for (; at <= last && likeness[at] > 0; at++) {
      const here = likeness[at];
      const isPeak = here >= likeness[at - 1] && here >= likeness[at + 1];
      if (isPeak && (best < 0 || here > likeness[best])) best = at;
    }
    if (best < 0) continue;
    const peak = parabolaPeak(likeness, best);
    if (peak.frames >= shortest) peaks.push(peak);
  }
  let highest = 0;
  for (const peak of peaks) highest = Math.max(highest, peak.likeness);
  return peaks.find((peak) => peak.likeness >= threshold * highest);
}

/** The top of the parabola through a point and its neighbours. */
function parabolaPeak(values: Float64Array, at: number): CoarsePeriod {
  const before = values[at - 1];
  const here = values[at];
  const after = values[at + 1];
  const bend = before - 2 * here + after;
  const shift = bend < 0 ? (before - after) / (2 * bend) : 0;
  return { frames: at + shift, likeness: here - ((before - after) * shift) / 4 };
}
