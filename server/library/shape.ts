/** What a value in a file of ours may be, as data: the reading of the file and its published schema are made from it. */
export type ValueShape = { description: string } & (
  | { kind: 'text' }
  | { kind: 'choice'; choices: readonly string[] }
  | { kind: 'flag' }
  /** A number from 0 to 1. */
  | { kind: 'share' }
  | { kind: 'list'; of: ValueShape }
  /** A text alone in place of an object whose one member it would be. */
  | { kind: 'textOr'; object: ObjectShape }
  | ObjectShape
);

export interface ObjectShape {
  kind: 'object';
  description: string;
  /** What a message calls it, as "An instrument". */
  called: string;
  fields: Readonly<Record<string, ValueShape>>;
  required?: readonly string[];
}
