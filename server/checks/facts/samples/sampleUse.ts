import type { SampleState } from '../../../model/samples';

/** What is known of a path; one for all that are alike, as a million that lead nowhere can be. */
export interface SamplePathFacts {
  /** The `default_path` in force. */
  readonly defaultPath: string;
  /** Whether the path is that of a file: no generator, not empty, and without an unknown variable. */
  readonly isFile: boolean;
  readonly state: SampleState;
  /** The last frame that can be played; NaN while it is not known, where the file is cut short or has no frames. */
  readonly lastFrame: number;
  /** False where rules about samples have nothing to find: a readable file on a relative path, or a generator. */
  readonly isDoubtful: boolean;
}

/** What a value of `sample` leads to with the `default_path` in force; one for all uses that say the same. */
export interface UsedSample {
  /** The value of the parameter. */
  readonly value: string;
  /** The path relative to the folder of the instrument file, with `/`. */
  readonly path: string;
  /** Equal for equal paths; see {@link SampleUses.paths}. */
  readonly number: number;
  readonly found: SamplePathFacts;
}

/**
 * A `sample` parameter with what it leads to. A text can have a million of them, so that what they share is held once and only
 * looks like their own.
 */
export class SampleUse {
  /** `region` is the first region that the parameter is in force in. */
  constructor(
    readonly parameter: number,
    readonly region: number,
    readonly sample: UsedSample,
  ) {}

  get value(): string {
    return this.sample.value;
  }

  get defaultPath(): string {
    return this.sample.found.defaultPath;
  }

  get path(): string {
    return this.sample.path;
  }

  get number(): number {
    return this.sample.number;
  }

  get isFile(): boolean {
    return this.sample.found.isFile;
  }

  get state(): SampleState {
    return this.sample.found.state;
  }

  get lastFrame(): number {
    return this.sample.found.lastFrame;
  }

  get isDoubtful(): boolean {
    return this.sample.found.isDoubtful;
  }
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
