import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import type { Source } from '../../model/text/source';
import type { InstrumentFacts } from '../libraryFile';

/** A text of an instrument that is to be packed. */
export interface PackText {
  instrument: Instrument;
  notation: Notation;
  /** The notation of a file that the instrument is made of. */
  notationOf: (source: Source) => Notation;
}

/** An instrument that is to be packed: its texts, and what goes with them. Paths are absolute, with `/`. */
export interface PackSource {
  /** What the pack and its texts are called. */
  name: string;
  /** One of each notation. */
  texts: readonly PackText[];
  /** Files that go along as they are, such as a SoundFont. */
  files?: readonly string[];
  facts: InstrumentFacts;
  picture?: string | undefined;
  /** What was noted on making it, as Markdown. */
  notes?: string | undefined;
}
