import type { VocabularyParameter } from '../../vocabulary';
import type { Assigned } from '../assign';
import { parameterAt } from '../draft';
import { loopMode } from '../words/words';
import { withOpposites, wordsForm } from './wordForms';

/** The loop mode that words of a place name, and the loop type where they tell it and no other place does. */
export function loopParameters(one: Assigned, assigned: readonly Assigned[]): VocabularyParameter[] {
  const { words } = wordsForm(one, (word) => loopMode(word)?.mode);
  const mode = parameterAt(one, 'loop_mode', {
    kind: 'words',
    words: withOpposites(words, (word) => loopMode(word)?.mode),
  });
  const types = [...one.facts.tally.keys()].map((word) => loopMode(word)?.type);
  const hasOwnType = assigned.some((other) => other.target === 'loop_type');
  if (hasOwnType || !types.some((type) => type === 'alternate' || type === 'backward')) return [mode];
  const form = wordsForm(one, (word) => loopMode(word)?.type ?? 'forward');
  return [mode, parameterAt(one, 'loop_type', form)];
}

/** Words such as `none` among ranges of loop points. */
export function loopWords(one: Assigned, assigned: readonly Assigned[]): VocabularyParameter[] {
  if (assigned.some(({ target }) => target === 'loop' || target === 'one_shot')) return [];
  const words: Record<string, string> = {};
  for (const word of one.facts.tally.keys()) {
    const mode = /\p{L}{2}/u.test(word) ? loopMode(word)?.mode : undefined;
    if (mode !== undefined) words[word] = mode;
  }
  if (Object.keys(words).length === 0) return [];
  return [{ parameter: 'loop_mode', at: one.column.at, form: { kind: 'words', words } }];
}
