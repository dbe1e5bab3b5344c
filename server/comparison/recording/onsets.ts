import type { LevelTrack } from './levelTrack';
import { floorOf } from './levelTrack';

/** A note begins where the level rises by so much from one stretch to the next, that far above the floor (our choice). */
const riseDb = 6;
const aboveFloorDb = 10;
/** Steps of the stretches, and from one onset to the next at the least. */
const stretch = 4;
const apart = 12;

/** Where notes begin in a sound, in seconds, by the rise of its level. */
export function onsetsOf(track: LevelTrack): number[] {
  const levels = track.levels();
  const least = floorOf(levels) + aboveFloorDb;
  const onsets: number[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (let at = 0; at + stretch <= levels.length; at++) {
    const rise = riseAt(levels, at);
    if (rise < riseDb || meanOf(levels, at, at + stretch) < least || at - last < apart) continue;
    // The steepest place of this rise.
    let best = at;
    for (let next = at + 1; next < at + 2 * stretch && next + stretch <= levels.length; next++)
      if (levels[next] - levels[next - 1] > levels[best] - (levels[best - 1] ?? levels[best])) best = next;
    onsets.push(best * track.secondsPerStep);
    last = best;
    at = best;
  }
  return onsets;
}

function riseAt(levels: Float32Array, at: number): number {
  return at === 0 ? 0 : meanOf(levels, at, at + stretch) - meanOf(levels, Math.max(0, at - stretch), at);
}

function meanOf(levels: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let at = from; at < to; at++) sum += levels[at];
  return sum / Math.max(1, to - from);
}
