import type { SilentRegion } from '../explaining/explain';
import { silentMessage } from '../explaining/silentMessage';
import type { PlayableInstrument } from '../playable/playableInstrument';
import type { Player } from '../player/player';
import { playMessage } from '../player/playMessage';
import type { PlayedNote } from './playedNote';
import { playUpTo, strikeOf } from './playedNote';
import { noteFor, strikesFor } from './regionNote';

/** A note that is to be played, from a fresh start, so that some regions sound. */
export interface CoveringStrike {
  note: PlayedNote;
  /** The regions that the strike starts, its release included, by position. */
  starts: number[];
}

/** Notes that let every region sound that can, and the others. */
export interface Coverage {
  strikes: CoveringStrike[];
  never: SilentRegion[];
}

/**
 * A small list of notes so that every region that can sound sounds at least once: region by region in the order of the
 * text, each that none of the notes before started gets one of its own. Strikes of one state follow one another. A
 * region that can never sound is given with the first reason that is left when all it asks for was tried.
 */
export function coveringStrikes(playable: PlayableInstrument, seed = 0): Coverage {
  const coverage: Coverage = { strikes: [], never: [] };
  const isCovered = new Uint8Array(playable.regionCount);
  for (let region = 0; region < playable.regionCount; region++) {
    if (isCovered[region] === 0) cover(playable, region, seed, isCovered, coverage);
  }
  return coverage;
}

function cover(
  playable: PlayableInstrument,
  region: number,
  seed: number,
  isCovered: Uint8Array,
  { strikes, never }: Coverage,
): void {
  const note = noteFor(playable, region);
  const { player, timeSeconds } = playUpTo(playable, note, seed);
  const most = strikesFor(playable, region);
  const strike = strikeOf(note);
  const isRelease = playable.releasesOnly[region] === 1 && note.by === undefined;
  const lookAt = isRelease ? strike.end : strike.start;
  let time = timeSeconds;
  let reason: SilentRegion | undefined;
  for (let number = 1; number <= most && isCovered[region] === 0; number++) {
    const starts: number[] = [];
    for (const [at, { seconds, message }] of strike.messages.entries()) {
      if (at === lookAt) reason = reasonOf(playable, player, region, note, time + seconds);
      for (const event of playMessage(player, message, time + seconds)) {
        if (event.kind === 'start') starts.push(event.region);
      }
    }
    time += strike.seconds;
    const isNew = starts.some((one) => isCovered[one] === 0);
    for (const one of starts) isCovered[one] = 1;
    if (isNew) strikes.push({ note: { ...note, strike: number }, starts });
    // A region whose only fault is that it has no sound need not be struck again.
    if (reason?.reason === 'sample' || reason?.reason === 'off') break;
  }
  if (isCovered[region] === 0 && reason) never.push(reason);
}

/** Why a region would stay silent just now; `undefined` where it would sound. */
function reasonOf(
  playable: PlayableInstrument,
  player: Player,
  region: number,
  { key, velocity, by: move }: PlayedNote,
  timeSeconds: number,
): SilentRegion | undefined {
  const isMoved = typeof move === 'object';
  const release = playable.releasesOnly[region] === 1 ? 'release' : 'strike';
  const by = isMoved ? { controller: move.controller, value: move.to } : release;
  let found: SilentRegion | undefined;
  player.lookAt({ key, velocity, timeSeconds, by, region }, (_, reason, memory) => {
    if (reason) found = { region, reason, message: silentMessage(playable, memory, region, reason) };
  });
  if (found || !isMoved || move.from !== move.to) return found;
  const message = `Controller ${move.controller} starts it on entering its range, but the range holds every value, so it is never entered.`;
  return { region, reason: 'trigger', message };
}
