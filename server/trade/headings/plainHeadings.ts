import { languages } from '../languages/languages';
import { wordsOf } from '../languages/spelling';
import { unitByStem } from '../languages/unitStems';
import type { ColumnMeaning } from '../meaning';
import { dictionaryOf } from './dictionary';

const longest = 40;
/** Words as they are written in ASCII, without a number or a sign that could tell more. */
const bareWords = /^[a-z](?:[a-z _-]*[a-z])?$/i;
/** Beginnings of words that say something of the values too: `Start key`, `Loop last frame`. */
const tellingWord = /^(?:start|initial|default|standard|frame)/;
/** Words for these say that samples play in turn. */
const telling: ReadonlySet<ColumnMeaning> = new Set(['seq_position', 'seq_length']);

/** Whether a heading is the name of a kind of values and no more, so that it states nothing of how they are to be read. */
export function isPlainHeading(text: string): boolean {
  if (text.length > longest || !bareWords.test(text)) return false;
  const words = wordsOf(text);
  if (words.some((word) => tellingWord.test(word) || unitByStem(word) !== undefined)) return false;
  const key = words.join('');
  for (const language of languages) {
    const meaning = dictionaryOf(language).meanings.get(key);
    if (meaning !== undefined) return !telling.has(meaning);
  }
  return false;
}
