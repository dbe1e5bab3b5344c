import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';

/** An instrument text as a person wrote it, with examples that stand for regions to come. */
export interface Template {
  text: string;
  notation: Notation;
  /** Reads a text as the template is read, with what it includes and what is known of samples. */
  read(text: string): Promise<Instrument>;
}
