import type { SampleFacts } from '../../../../server/model/samples';
import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';

/** A text in an invented vocabulary, and what is true of it. */
export interface HeldOut {
  /** What the text determines. */
  vocabulary: Vocabulary;
  text: string;
  /** What the headers of sample files say, where there are any. */
  samples: ReadonlyMap<string, SampleFacts>;
  /** Decisions that the text leaves open. */
  open: readonly string[];
}
