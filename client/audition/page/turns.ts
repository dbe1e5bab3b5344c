import type { PlayableInstrument } from '../../../server/playing/playable/playableInstrument';
import type { PlayedInTurn } from '../messages';

/** A note of a row of notes. */
export interface Turn {
  key: number;
  velocity: number;
}

/** How hard keys are played that are played for the keys' sake (our choice). */
const usualVelocity = 96;

/** The notes that let regions be heard in turn, all keys one after the other, or the velocity layers of one key, soft to loud. */
export function turnsOf(
  playable: PlayableInstrument,
  headers: readonly number[],
  what: PlayedInTurn,
): Turn[] {
  if (what === 'keys') return keysOf(playable);
  const regions = headers.map((header) => playable.header.indexOf(header));
  const notes = regions
    .filter((region) => region >= 0 && playable.lowKey[region] >= 0)
    .map((region) => noteOf(playable, region));
  return what === 'regions' ? notes : layersOf(playable, notes[0]?.key);
}

/** Its root key, or the nearest that it has, at its middle velocity. */
function noteOf(
  { lowKey, highKey, rootKey, lowVelocity, highVelocity }: PlayableInstrument,
  region: number,
): Turn {
  const key = Math.max(lowKey[region], Math.min(highKey[region], rootKey[region]));
  const velocity = Math.max(1, Math.round((lowVelocity[region] + highVelocity[region]) / 2));
  return { key, velocity };
}

function keysOf({ regionCount, lowKey, highKey }: PlayableInstrument): Turn[] {
  const isPlayed = new Uint8Array(128);
  for (let region = 0; region < regionCount; region++) {
    if (lowKey[region] >= 0) isPlayed.fill(1, lowKey[region], highKey[region] + 1);
  }
  return [...isPlayed.keys()].filter((key) => isPlayed[key]).map((key) => ({ key, velocity: usualVelocity }));
}

function layersOf(playable: PlayableInstrument, key: number | undefined): Turn[] {
  if (key === undefined) return [];
  const velocities = new Set<number>();
  for (let region = 0; region < playable.regionCount; region++) {
    if (playable.lowKey[region] <= key && key <= playable.highKey[region])
      velocities.add(noteOf(playable, region).velocity);
  }
  return [...velocities].sort((a, b) => a - b).map((velocity) => ({ key, velocity }));
}
