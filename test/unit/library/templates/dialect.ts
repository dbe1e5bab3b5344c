import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { vocabularyNotation } from '../../../../server/vocabulary/vocabularyNotation';
import { putInto } from './putInto';

/** Puts regions into a template in a dialect of its own. */
export async function converted(template: string, source: string) {
  const vocabulary = inferVocabulary(template, { path: 'template.xml' })?.vocabulary;
  if (!vocabulary) throw new Error('no instrument');
  const { text, notes } = await putInto(template, source, {}, vocabularyNotation(vocabulary));
  return { text, notes: notes.map(({ message }) => message) };
}
