import type { ColumnMeaning } from '../meaning';
import { readHeading } from './headings';

const mostWords = 40;

/**
 * The meanings of columns that the first words of a sentence name, in their order and perhaps more than once: two words are looked at
 * before each of them alone, so that `fine tune` is said before `tune`. Words that are only like those of a heading do not count.
 */
export function* saidMeanings(words: readonly string[]): Generator<ColumnMeaning> {
  for (let from = 0; from < Math.min(words.length, mostWords); from++) {
    for (const length of [2, 1]) {
      const phrase = words.slice(from, from + length).join(' ');
      const said = phrase.length > 2 ? readHeading(phrase) : undefined;
      if (said && !said.likeness) yield said.meaning;
    }
  }
}
