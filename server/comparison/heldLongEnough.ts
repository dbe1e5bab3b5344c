import { LoopMode } from '../playing/playable/playableInstrument';
import type { PlayedNote } from '../playing/sweep/playedNote';
import { usualTimes } from '../playing/sweep/playedNote';
import type { RenderSource } from '../sound/render/renderParts';

/** Seconds that a note is held at the most; what comes later is not heard (our choice). */
const longestHoldSeconds = 20;
/** Seconds that a loop is heard for after it has closed once, and an envelope after it has risen. */
const behindSeconds = 0.3;

/** A side of a comparison with the regions that a note starts on it. */
export interface StartedRegions {
  source: RenderSource;
  regions: readonly number[];
}

/** The note, held so long that each loop of the regions it starts closes once and each envelope has risen. */
export function heldLongEnough(note: PlayedNote, sides: readonly StartedRegions[]): Promise<PlayedNote> {
  return held(note, sides, async (source, region) =>
    Math.max(risesAt(source, region), await loopClosesAt(source, region, note.key)),
  );
}

/** The note, held until the samples of the regions it starts are over. */
export function heldToTheEnd(note: PlayedNote, sides: readonly StartedRegions[]): Promise<PlayedNote> {
  return held(note, sides, async (source, region) => {
    const path = source.paths[source.program.sample[region]];
    const shape = path === undefined ? undefined : await source.samples.shape(path);
    const frames = shape ? shape.frames / (shape.rate * stepOf(source, region, note.key)) : 0;
    return frames + source.playable.delaySeconds[region];
  });
}

async function held(
  note: PlayedNote,
  sides: readonly StartedRegions[],
  until: (source: RenderSource, region: number) => Promise<number>,
): Promise<PlayedNote> {
  const usual = note.holdSeconds ?? usualTimes.holdSeconds;
  let holdSeconds: number = usual;
  for (const { source, regions } of sides) {
    for (const region of regions) {
      const needed = await until(source, region);
      if (needed > 0)
        holdSeconds = Math.max(holdSeconds, Math.min(longestHoldSeconds, needed + behindSeconds));
    }
  }
  if (holdSeconds === usual) return note;
  const everySeconds = Math.max(
    note.everySeconds ?? usualTimes.everySeconds,
    holdSeconds + usualTimes.holdSeconds,
  );
  return { ...note, holdSeconds, everySeconds };
}

/** Seconds after which the level has risen; 0 where that is at once. */
function risesAt({ program, playable }: RenderSource, region: number): number {
  const { base, amplitudeEnvelope } = program.recipes[program.recipe[region]];
  const slot = amplitudeEnvelope.firstSlot;
  // Delay, attack and hold; the start level stands between the first two.
  return playable.delaySeconds[region] + base[slot] + base[slot + 2] + base[slot + 3];
}

/** Seconds after which a region's loop closes for the first time when a key plays it; 0 without a loop. */
async function loopClosesAt(source: RenderSource, region: number, key: number): Promise<number> {
  const { program, paths, samples } = source;
  const mode = program.loopMode[region];
  const end = program.loopEnd[region];
  const path = paths[program.sample[region]];
  if ((mode !== LoopMode.loopContinuous && mode !== LoopMode.loopSustain) || end < 0 || path === undefined)
    return 0;
  const shape = await samples.shape(path);
  return shape ? (end + 1) / (shape.rate * stepOf(source, region, key)) : 0;
}

/** Key tracking may be less; then what is waited for comes sooner for keys below the root, which does no harm. */
function stepOf({ program }: RenderSource, region: number, key: number): number {
  return 2 ** ((key - program.rootKey[region]) / 12);
}
