import { nameKinds } from './nameParts';

/** Dynamics from soft to loud, as scores write them (common practice). */
export const dynamicLetters = ['pppp', 'ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff', 'ffff'] as const;

const wordLabel = nameKinds.find(({ kind }) => kind === 'layers')?.labelOf;

/** The position among {@link dynamicLetters} of a text that is one of them, in any letter case; −1 for other text. */
export function dynamicOf(text: string): number {
  return (dynamicLetters as readonly string[]).indexOf(text.toLowerCase());
}

/** As {@link dynamicOf}, for words such as `soft` and `loud` too. */
export function dynamicIn(text: string): number {
  const letter = dynamicOf(text);
  return letter >= 0 ? letter : dynamicOf(wordLabel?.(text) ?? '');
}
