import type { SampleState } from '../../../model/samples';

/** A `sample` parameter with the path that it makes with the `default_path` in force. */
export interface SampleUse {
  parameter: number;
  /** The first region that it is in force in. */
  region: number;
  /** The value of the parameter, and the `default_path` in force. */
  value: string;
  defaultPath: string;
  /** The path relative to the folder of the instrument file, with `/`. */
  path: string;
  /** Equal for equal paths; see {@link SampleUses.paths}. */
  number: number;
  /** Whether the path is that of a file: no generator, not empty, and without an unknown variable. */
  isFile: boolean;
  state: SampleState;
  /** The last frame that can be played; NaN while it is not known, where the file is cut short or has no frames. */
  lastFrame: number;
  /** False where rules about samples have nothing to find: a readable file on a relative path, or a generator. */
  isDoubtful: boolean;
}

/** The samples that regions use; the same object in the next check where they are the same there. */
export interface SampleUses {
  uses: readonly SampleUse[];
  /** Those of {@link uses} that rules about samples have to look at. */
  doubtful: readonly SampleUse[];
  /** The position in {@link uses} for each region in the order of `Instrument.regions`; −1 without a sample. */
  useOfRegion: Int32Array;
  /** The regions that this is about: `Instrument.regions`. */
  regions: Int32Array;
  /**
   * Numbers of paths, counted from 0; not all of them need be in use. The same object in the next check as long as
   * the same numbers and answers about samples hold.
   */
  paths: ReadonlyMap<string, number>;
}
