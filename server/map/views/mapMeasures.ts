/** What was measured of a region; what is not known, or cannot be measured, is absent. */
export interface RegionMeasure {
  header: number;
  /** How far above its root key it sounds when that key is played. */
  cents?: number;
  /** How loudly it plays its sample at full velocity, in LUFS, its gain counted in. */
  levelDb?: number;
}

/** What a note does at a velocity. */
export interface VelocityLevel {
  velocity: number;
  /** All that sounds, in dB: of the samples' loudness where that is known, else of their full scale. −Infinity is absent. */
  levelDb?: number;
  /** Headers of the regions that sound. */
  regions: number[];
  /** How many of them play a file whose loudness is not known, so that its full scale counts; absent for none. */
  unmeasured?: number;
}

/** What was measured of an instrument, for the views of its map. */
export interface MapMeasures {
  regions: RegionMeasure[];
  /** The key that the velocities are of. */
  key: number;
  /** By velocity, 1 to 127. */
  velocities: VelocityLevel[];
}
