/** What is known of a sound around the two ends of a loop, in one channel. */
export interface LoopSurroundings {
  /** First and last frame of the loop, and the frames in the file. */
  start: number;
  end: number;
  frames: number;
  sampleRate: number;
  /** The value of a frame near the start or near the end of the loop. */
  near: { start: (frame: number) => number; end: (frame: number) => number };
}
