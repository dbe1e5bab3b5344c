import { LoopMode } from '../playing/playable/playableInstrument';
import type { PlayedNote } from '../playing/sweep/playedNote';
import { usualTimes } from '../playing/sweep/playedNote';
import type { RenderSource } from '../sound/render/renderParts';

/** Seconds that a note is held at the most; loops that come later are not heard (our choice). */
const longestHoldSeconds = 20;
/** Seconds that a loop is heard for after it has closed once. */
const behindLoopSeconds = 0.3;

/** A side of a comparison with the regions that a note starts on it. */
export interface StartedRegions {
  source: RenderSource;
  regions: readonly number[];
}

/** The note, held so long that each loop of the regions it starts closes once. */
export async function heldLongEnough(
  note: PlayedNote,
  sides: readonly StartedRegions[],
): Promise<PlayedNote> {
  let holdSeconds: number = note.holdSeconds ?? usualTimes.holdSeconds;
  for (const { source, regions } of sides) {
    for (const region of regions) {
      const closes = await loopClosesAt(source, region, note.key);
      holdSeconds = Math.max(holdSeconds, Math.min(longestHoldSeconds, closes + behindLoopSeconds));
    }
  }
  if (holdSeconds === (note.holdSeconds ?? usualTimes.holdSeconds)) return note;
  const everySeconds = Math.max(
    note.everySeconds ?? usualTimes.everySeconds,
    holdSeconds + usualTimes.holdSeconds,
  );
  return { ...note, holdSeconds, everySeconds };
}

/** Seconds after which a region's loop closes for the first time when a key plays it; 0 without a loop. */
async function loopClosesAt(
  { program, paths, samples }: RenderSource,
  region: number,
  key: number,
): Promise<number> {
  const mode = program.loopMode[region];
  const end = program.loopEnd[region];
  const path = paths[program.sample[region]];
  if ((mode !== LoopMode.loopContinuous && mode !== LoopMode.loopSustain) || end < 0 || path === undefined)
    return 0;
  const shape = await samples.shape(path);
  // Key tracking may be less; then the loop closes sooner for keys below the root, which does no harm.
  const step = 2 ** ((key - program.rootKey[region]) / 12);
  return shape ? (end + 1) / (shape.rate * step) : 0;
}
