import type { SampleFacts } from '../../../../server/model/samples';
import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';

/** The values in force in a region, by the names and in the units of the open SFZ format. */
export type TrueValues = Record<string, string | number>;

/** An invented way of writing an instrument in XML, with an instrument written in it. */
export interface Example {
  vocabulary: Vocabulary;
  /** What is true of each region, in the order of the text. */
  regions: TrueValues[];
  text: string;
  /** What the headers of the sample files say, by their paths. */
  samples: ReadonlyMap<string, SampleFacts>;
}
