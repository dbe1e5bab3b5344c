import type { SampleListPlace } from '../../vocabulary';

/** A list of samples that regions refer to. */
export interface SampleList {
  place: SampleListPlace;
  /** The path of each sample by what refers to it. */
  paths: ReadonlyMap<string, string>;
  /** What stands in the attributes of its entries that could be sample rates, by attribute and key. */
  rates: ReadonlyMap<string, ReadonlyMap<string, string>>;
}
