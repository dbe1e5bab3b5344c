import type { ListPlace } from '../../vocabulary';
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
  /** The unit that stands beside it, as a concept of names. */
  unit?: string | undefined;
  /** The numbers that a place around regions says its values lie among. */
  range?: { low: number; high: number };
  /** Where it holds keys of a list: the place in its entries that the cells stand in. */
  listed?: ListPlace;
  /** The number of the controller that it is about. */
  controller?: number;
  /** Whether some rows have it in several elements that stand in one another; the cells are those of the innermost. */
  repeats?: true;
  /** One for each row. */
  cells: (Cell | undefined)[];
}
