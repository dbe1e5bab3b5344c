import { middleCIn, middleKeyIn } from '../../trade/statements/statedOctave';
import { isBaseName } from '../infer/words/baseWords';
import { nameWords } from '../infer/words/nameWords';
import type { Vocabulary } from '../vocabulary';

/**
 * Whether a place explains how keys are written, as a vocabulary reads them: `middle-c="60"`, `octave="middle C is C3"`. It sets
 * nothing, and is understood all the same.
 */
export function formsExplainedIn(vocabulary: Vocabulary): (name: string, value: string) => boolean {
  const forms = vocabulary.levels.flatMap(({ parameters }) =>
    parameters.flatMap(({ form }) => (form.kind === 'key' ? [form] : [])),
  );
  return (name, value) => {
    const words = nameWords(name);
    // Keys may be counted from one that is named so.
    if (isBaseName(words) && forms.some(({ offset = 0 }) => offset < 0 && Number(value) === 0 - offset))
      return true;
    const said = [...words, value].join(' ');
    const middleC = middleCIn(said);
    if (middleC !== undefined)
      return forms.some((form) => form.written === 'name' && (form.middleC ?? 'C4') === middleC);
    const key = middleKeyIn(said);
    return key !== undefined && forms.some(({ offset = 0 }) => key - 60 === offset);
  };
}
