import type { RecipeDraft } from './recipeDraft';

/**
 * Takes the value of an opcode into a recipe: `value` as a number, NaN for the words of `text`; `indexes` are the numbers in
 * the opcode's name. Answers `false` where this value is not rendered, and anything else where it is.
 */
export type OpcodeHandler = (
  draft: RecipeDraft,
  value: number,
  indexes: readonly number[],
  text: string,
) => unknown;
