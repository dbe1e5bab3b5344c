/** A piece of a text in which variables can stand. */
export interface VariablePiece {
  text: string;
  /** Whether a `$` in it is that sign and starts no variable. */
  literal: boolean;
}

/** A text before variables are put in, without what a notation writes around it. */
export type VariableText = readonly VariablePiece[];

/** The text as it would stand where a `$` always starts a variable. */
export function joinedText(text: VariableText): string {
  return text.map((piece) => piece.text).join('');
}

/** A text that no variable stands in. */
export function literalText(text: string): VariableText {
  return [{ text, literal: true }];
}

/** Whether a variable can stand in a text. */
export function hasVariable(text: VariableText): boolean {
  return text.some((piece) => !piece.literal && /\$\w/.test(piece.text));
}
