import type { RowTable } from '../interpolation/windowedSinc';
import type { InputWindows } from './inputWindows';
import type { MixGains } from './mixing';

/** Input that is read: two channels, the same one twice for mono. */
export interface Channels {
  left: Float32Array;
  right: Float32Array;
}

/** Two channels of what is computed, a block long and a little more: compiled code goes in whole vectors. */
export interface Sound {
  readonly left: Float64Array;
  readonly right: Float64Array;
}

/** The most frames that voices are asked for at once: a block of Web Audio. */
export const blockFrames = 128;

/**
 * The arrays that voices compute in and the loops in which most of their time goes by, in JavaScript or compiled. It is
 * one for all voices of a thread, one after the other. The compiled one reads and mixes nothing but its own arrays.
 */
export interface Kernel {
  /** What is gathered to be read: `inputFrames` for all voices, and behind them the windows of a compiled one. */
  readonly input: Channels;
  /** Who has which window; not there where samples are read in their own arrays. */
  readonly windows: InputWindows | undefined;
  /** One piece of the sound of one voice. */
  readonly sound: Sound;
  /** The sum of all voices of a block. */
  readonly mix: Sound;
  /** The tables that it was made with, in its memory. */
  readonly tables: readonly RowTable[];
  /**
   * Writes `count` values with the taps of the nearest phase: `first` is the first tap of the first value, `fraction` the
   * place between two frames, and `step` and `slope` what it moves on by, all three in parts of {@link fractions}. Up to three
   * values behind the last may be written too. Mono fills the left output.
   */
  readTaps(
    table: RowTable,
    input: Channels,
    first: number,
    fraction: number,
    step: number,
    slope: number,
    output: Sound,
    from: number,
    count: number,
  ): void;
  /** Adds the first `count` frames of the sound, mono or not, to the mix from a frame on, if all are numbers; else `false`. */
  mixSound(isMono: boolean, gains: MixGains, from: number, count: number): boolean;
}

/** The parts of a frame that places between two are counted in: the first 11 bits of 26, rounded, are the phase. */
export const fractions = 0x4000000;
