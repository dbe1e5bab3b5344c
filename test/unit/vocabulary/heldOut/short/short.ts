import type { SampleFacts } from '../../../../../server/model/samples';

/** A short text in an invented vocabulary, with what a person reads in it. */
export interface Short {
  text: string;
  /** What the headers of sample files say, where there are any. */
  samples?: Readonly<Record<string, SampleFacts>>;
  /** The values in force of each region, in the terms of the open SFZ format. */
  regions: readonly Readonly<Record<string, string | number>>[];
  /** Decisions that the text leaves open. */
  open: readonly string[];
}
