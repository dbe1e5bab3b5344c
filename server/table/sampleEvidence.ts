/** What is known of the sample files, by the name in the table. */
export interface SampleEvidence {
  /** The root key that a file itself carries. */
  rootKeyOf?: ((sample: string) => number | undefined) | undefined;
  /** The pitch measured in a file, as a MIDI key with a fraction. */
  pitchOf?: ((sample: string) => number | undefined) | undefined;
  /** Frames a second: times are counted in frames with it. */
  rateOf?: ((sample: string) => number | undefined) | undefined;
  /** How many frames a file has. */
  framesOf?: ((sample: string) => number | undefined) | undefined;
  /** The first loop that a file itself carries; its end is the last frame that is played. */
  loopOf?: ((sample: string) => { start: number; end: number } | undefined) | undefined;
}
