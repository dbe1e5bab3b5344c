import type { LiteralNode, LiteralValue } from './literalTree';

/** A value of a zone, under a heading that its keys make, or by its place alone. */
export interface LiteralField {
  heading: string;
  /** Where the heading stands; `undefined` for one that is not in the text. */
  key: LiteralValue | undefined;
  text: string;
  start: number;
  end: number;
  /** The values of a list. */
  items?: readonly LiteralNode[];
}
