import type { SampleListPlace } from '../vocabulary';

/** A list of samples that regions refer to. */
export interface SampleList {
  place: SampleListPlace;
  /** The path of each sample by what refers to it. */
  paths: ReadonlyMap<string, string>;
}
