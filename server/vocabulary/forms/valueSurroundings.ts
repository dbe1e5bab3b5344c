/** What a value may depend on beyond its own text. */
export interface ValueSurroundings {
  /** The name of the parameter in the open SFZ format. */
  parameter: string;
  /** Frames a second of the sample; `undefined` where it is not known. */
  sampleRate: number | undefined;
  /** Frames a second that the text states for the sample. */
  statedRate?: number | undefined;
  /** Frames of the sample; `undefined` where it is not known. */
  frames: number | undefined;
  /** The value, in frames, of another parameter of the region, such as `loop_start`; 0 where it is not set. */
  frameOf(parameter: string): number;
}
