import type { PlayableInstrument } from '../playable/playableInstrument';
import type { SilentReason } from '../player/conditions';
import type { Player } from '../player/player';
import { silentMessage } from './silentMessage';

/** A region that a note leaves silent. */
export interface SilentRegion {
  /** The region's position among the regions of the instrument. */
  region: number;
  /** The first reason that holds, in the order of `silentReasons`. */
  reason: SilentReason;
  /** The reason as a sentence, with what is asked for and what is. */
  message: string;
}

/** What a note starts, and why it leaves the rest silent; regions in the order of the text. */
export interface Explanation {
  sounds: number[];
  silent: SilentRegion[];
}

/** Explains what striking a key would start just now; the player does not move. */
export function explain(
  playable: PlayableInstrument,
  player: Player,
  { key, velocity, timeSeconds }: { key: number; velocity: number; timeSeconds: number },
): Explanation {
  const sounds: number[] = [];
  const silent: SilentRegion[] = [];
  player.lookAt({ key, velocity, timeSeconds }, (region, reason, memory) => {
    if (reason === undefined) sounds.push(region);
    else silent.push({ region, reason, message: silentMessage(playable, memory, region, reason) });
  });
  return { sounds, silent };
}
