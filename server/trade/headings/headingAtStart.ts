import type { HeadingReading } from './headings';
import { readHeading } from './headings';

const unspacedWord = /^[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}ー]{3,16}$/u;

/** The longest heading that words of a script without blanks start with, as in `力度的范围是`. */
export function headingAtStart(phrase: string): HeadingReading | undefined {
  if (!unspacedWord.test(phrase)) return undefined;
  for (let length = phrase.length - 1; length > 1; length--) {
    const found = readHeading(phrase.slice(0, length));
    if (found) return found;
  }
  return undefined;
}
