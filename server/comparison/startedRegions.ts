import type { PlayableInstrument } from '../playing/playable/playableInstrument';
import { createPlayer } from '../playing/player/createPlayer';
import { playMessage } from '../playing/player/playMessage';
import { coveringStrikes } from '../playing/sweep/coveringStrikes';
import type { PlayedNote } from '../playing/sweep/playedNote';
import { messagesOf } from '../playing/sweep/playedNote';
import type { RegionLikeness } from './regionLikeness';

/** Notes that let all regions of either side sound that can, each note once. */
export function notesFor(sides: readonly PlayableInstrument[]): PlayedNote[] {
  const notes = new Map<string, PlayedNote>();
  for (const playable of sides) {
    for (const { note } of coveringStrikes(playable).strikes) notes.set(JSON.stringify(note), note);
  }
  return [...notes.values()];
}

/** The regions that a note starts from a fresh start, in order. */
export function regionsStarted(playable: PlayableInstrument, note: PlayedNote): number[] {
  const { channel, tempoBpm } = note;
  const player = createPlayer(playable, { ...(channel && { channel }), ...(tempoBpm && { tempoBpm }) });
  const regions: number[] = [];
  for (const { seconds, message } of messagesOf(note)) {
    for (const event of playMessage(player, message, seconds))
      if (event.kind === 'start') regions.push(event.region);
  }
  return regions;
}

/** How the regions that a note starts on two sides belong together. */
export interface RegionPairing {
  /** Those that sound alike. */
  alike: (readonly [a: number, b: number])[];
  /** Those that have no such partner. */
  a: number[];
  b: number[];
}

/** Pairs regions of two sides that sound alike, whatever their order. */
export async function pairRegions(
  ofA: readonly number[],
  ofB: readonly number[],
  likeness: RegionLikeness,
): Promise<RegionPairing> {
  const pairing: RegionPairing = { alike: [], a: [], b: [...ofB] };
  for (const [at, region] of ofA.entries()) {
    // Most often the partner stands at the same place.
    const order = [ofB[at], ...pairing.b].filter((other) => other !== undefined && pairing.b.includes(other));
    let partner: number | undefined;
    for (const other of order) {
      if (!(await likeness.soundAlike(region, other))) continue;
      partner = other;
      break;
    }
    if (partner === undefined) pairing.a.push(region);
    else {
      pairing.b.splice(pairing.b.indexOf(partner), 1);
      pairing.alike.push([region, partner]);
    }
  }
  return pairing;
}
