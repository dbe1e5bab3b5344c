import type { VocabularyParameter } from '../../vocabulary';
import type { Assigned } from '../assign';
import { parameterAt } from '../draft';
import { loopMode } from '../words/words';
import { explainedForm, withOpposites, wordsForm } from './wordForms';

const saysMode: ReadonlySet<string> = new Set(['loop', 'loop_until', 'one_shot']);

/** The loop mode that words of a place name, and the loop type where they tell it and no other place does. */
export function loopParameters(one: Assigned, assigned: readonly Assigned[]): VocabularyParameter[] {
  if (one.words)
    return [
      parameterAt(
        one,
        'loop_mode',
        explainedForm(one, one.words, (word) => loopMode(word)?.mode),
      ),
    ];
  const hasMode = one.target === 'loop_on' && assigned.some(({ target }) => saysMode.has(target));
  // Beside a place that says how it loops, a switch says no more than whether.
  const meaning = (word: string) => {
    const mode = loopMode(word)?.mode;
    return hasMode && mode !== undefined && mode !== 'no_loop' ? '' : mode;
  };
  const { words } = wordsForm(one, meaning);
  const mode = parameterAt(one, 'loop_mode', {
    kind: 'words',
    words: withOpposites(words, meaning),
    ...(hasMode && { over: true }),
  });
  if (hasMode) return [mode];
  const types = [...one.facts.tally.keys()].map((word) => loopMode(word)?.type);
  const hasOwnType = assigned.some((other) => other.target === 'loop_type');
  if (hasOwnType || !types.some((type) => type === 'alternate' || type === 'backward')) return [mode];
  const form = wordsForm(one, (word) => loopMode(word)?.type ?? 'forward');
  return [mode, parameterAt(one, 'loop_type', form)];
}

/** Words such as `none` among ranges of loop points. */
export function wordedLoops(one: Assigned, assigned: readonly Assigned[]): VocabularyParameter[] {
  if (assigned.some(({ target }) => target === 'loop_on' || saysMode.has(target))) return [];
  const words: Record<string, string> = {};
  for (const word of one.facts.tally.keys()) {
    const mode = /\p{L}{2}/u.test(word) ? loopMode(word)?.mode : undefined;
    if (mode !== undefined) words[word] = mode;
  }
  if (Object.keys(words).length === 0) return [];
  return [{ parameter: 'loop_mode', at: one.column.at, form: { kind: 'words', words } }];
}
