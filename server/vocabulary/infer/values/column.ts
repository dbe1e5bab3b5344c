import type { Cell } from '../elements/survey';

/** A place in an element of the chain, and what stands there for each region that was looked at. */
export interface Column {
  /** Position of the element in the chain. */
  level: number;
  /** As in `VocabularyParameter.at`. */
  at: string;
  /** The words of its own name, and of the child elements that it stands in, from the outermost inwards. */
  own: readonly string[];
  around: readonly (readonly string[])[];
  /** One for each row. */
  cells: (Cell | undefined)[];
}
