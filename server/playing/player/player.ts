import type { SilentReason } from './conditions';
import type { PlayEvent } from './events';
import type { PlayMemory } from './playMemory';
import type { PlayState } from './playState';

/** A note that is looked at before it is played. */
export interface Look {
  key: number;
  velocity: number;
  timeSeconds: number;
  /** What happens, for a controller the value that it comes to; where it is not said the key is struck. */
  by?: 'strike' | 'release' | { controller: number; value: number };
  /** The one region that is looked at; all where it is not said. */
  region?: number;
}

/**
 * Plays an instrument without sound: takes what a keyboard sends and answers with the voices to start and to end, in
 * order. Times are seconds of one clock and must not go back. Keys, controllers and values outside of MIDI's ranges
 * change nothing.
 */
export interface Player {
  readonly state: PlayState;
  /** A velocity of 0 lets the key go (MIDI 1.0). */
  noteOn(key: number, velocity: number, timeSeconds: number): readonly PlayEvent[];
  noteOff(key: number, releaseVelocity: number, timeSeconds: number): readonly PlayEvent[];
  /** Values 0..127, fractions for fine ones. */
  controller(number: number, value: number, timeSeconds: number): readonly PlayEvent[];
  /** −8192..8191. */
  bend(value: number, timeSeconds: number): readonly PlayEvent[];
  channelPressure(value: number, timeSeconds: number): readonly PlayEvent[];
  polyPressure(key: number, value: number, timeSeconds: number): readonly PlayEvent[];
  program(number: number, timeSeconds: number): readonly PlayEvent[];
  /** Ends all voices fast, lets all keys and held notes go; controllers stay as they are. */
  allOff(timeSeconds: number): readonly PlayEvent[];
  /**
   * Looks at what a note would start just now and what keeps each region silent, without playing it: `see` is called for
   * every region in order, or for one, with the first reason, or `undefined` where it would sound, and with what is
   * remembered as of the note, to be read only during the call.
   */
  lookAt(
    look: Look,
    see: (region: number, reason: SilentReason | undefined, memory: PlayMemory) => void,
  ): void;
  /** To be told by the sound when a voice has come to its end by itself, so that it counts no more. */
  voiceEnded(voice: number): void;
}
