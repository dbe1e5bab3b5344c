import { nameKinds } from './nameParts';

/** Dynamics from soft to loud, as scores write them (common practice). */
export const dynamicLetters = ['pppp', 'ppp', 'pp', 'p', 'mp', 'mf', 'f', 'ff', 'fff', 'ffff'] as const;

const wordLabel = nameKinds.find(({ kind }) => kind === 'layers')?.labelOf;
/** Words that make soft softer and loud louder, and words that bring both to the middle. */
const more = /^(?:very|extra|sehr|tres|muy|molto|muito|zeer|erg)$/;
const less = /^(?:medium|med|mid|mezzo|mittel|half|halb|mi|medio|meio|halve?)$/;

/** The position among {@link dynamicLetters} of a text that is one of them, in any letter case; −1 for other text. */
export function dynamicOf(text: string): number {
  return (dynamicLetters as readonly string[]).indexOf(text.toLowerCase());
}

/** As {@link dynamicOf}, for words such as `soft`, `very loud` and `medium soft` too. */
export function dynamicIn(text: string): number {
  const letter = dynamicOf(text);
  if (letter >= 0) return letter;
  const parts = text
    .trim()
    .toLowerCase()
    .split(/[\s_-]+/);
  const word = dynamicOf(wordLabel?.(parts.at(-1) ?? '') ?? '');
  const [soft, loud] = [dynamicOf('p'), dynamicOf('f')];
  if (parts.length === 1 || word < 0) return parts.length === 1 ? word : -1;
  if (parts.length > 2) return -1;
  const plain = parts[0].normalize('NFKD').replace(/\p{M}/gu, '');
  if (more.test(plain) && (word === soft || word === loud)) return word === soft ? word - 1 : word + 1;
  return less.test(plain) && (word === soft || word === loud) ? dynamicOf(word === soft ? 'mp' : 'mf') : -1;
}
