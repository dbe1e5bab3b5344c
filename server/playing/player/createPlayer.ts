import type { PlayableInstrument } from '../playable/playableInstrument';
import type { Player } from './player';
import type { PlayerOptions } from './playerOptions';
import { RegionPlayer } from './regionPlayer';

/** A player of an instrument with nothing played yet: controllers at their first values, no key down. */
export function createPlayer(playable: PlayableInstrument, options: PlayerOptions = {}): Player {
  return new RegionPlayer(playable, options);
}
