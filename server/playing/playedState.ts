import { createPlayer } from './createPlayer';
import type { PlayableInstrument } from './playableInstrument';
import type { Player } from './player';

/** A note in a state that is reached by playing. */
export interface PlayedNote {
  key: number;
  velocity: number;
  /** Controllers that are moved before, by number. */
  controllers?: ReadonlyMap<number, number>;
  /** A keyswitch that is pressed before. */
  keyswitch?: number | undefined;
  /** The how manyth time the key is struck, from 1. */
  strike?: number;
  seed?: number;
}

/** Seconds from one strike to the next, and how long a key is held (our choice: nothing but timers asks). */
const strikeEverySeconds = 1;
const heldSeconds = 0.5;
const keyswitchVelocity = 100;

/**
 * A player that is about to have a key struck: controllers are moved, the keyswitch is pressed and let go, or stays
 * down where a region asks for it to be held, and the key was struck as often as is said, less one. Gives the time of
 * the strike to come.
 */
export function playUpTo(
  playable: PlayableInstrument,
  note: PlayedNote,
): { player: Player; timeSeconds: number } {
  const player = createPlayer(playable, { seed: note.seed ?? 0 });
  let timeSeconds = 0;
  for (const [number, value] of note.controllers ?? []) player.controller(number, value, timeSeconds);
  const { keyswitch } = note;
  if (keyswitch !== undefined) {
    player.noteOn(keyswitch, keyswitchVelocity, timeSeconds);
    if (!playable.switchDown.includes(keyswitch)) player.noteOff(keyswitch, 0, timeSeconds + heldSeconds);
    timeSeconds += strikeEverySeconds;
  }
  for (let strike = 1; strike < (note.strike ?? 1); strike++) {
    player.noteOn(note.key, note.velocity, timeSeconds);
    player.noteOff(note.key, 0, timeSeconds + heldSeconds);
    timeSeconds += strikeEverySeconds;
  }
  return { player, timeSeconds };
}
