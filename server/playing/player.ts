import type { PlayEvent } from './events';
import type { PlayState } from './playState';

/** What a player is made with. */
export interface PlayerOptions {
  /** The start of all random streams; the same seed and the same playing give the same events. */
  seed?: number;
  channel?: number;
  tempoBpm?: number;
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
  /** To be told by the sound when a voice has come to its end by itself, so that it counts no more. */
  voiceEnded(voice: number): void;
}
