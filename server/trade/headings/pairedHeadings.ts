import { languages } from '../languages/languages';
import { bareWord, isForm, wordsOf } from '../languages/spelling';

const mostWords = 6;
/** Longer words beside a subject say something of their own; shorter ones are articles. */
const longestArticle = 3;

interface EndWords {
  /** Words before the lower and the upper end, those of several words first. */
  low: readonly (readonly string[])[];
  high: readonly (readonly string[])[];
  keys: readonly string[];
  velocities: readonly string[];
}

const endWords: readonly EndWords[] = languages.map(({ told, ends, parts }) => ({
  low: phrases(told?.first, ends.low, ends.from),
  high: phrases(told?.last, ends.high, ends.upTo),
  keys: (parts.key ?? []).map(bareWord),
  velocities: (parts.velocity ?? []).map(bareWord),
}));

function phrases(...lists: readonly (readonly string[] | undefined)[]): string[][] {
  return lists
    .flatMap((list) => list ?? [])
    .map(wordsOf)
    .filter(({ length }) => length > 0)
    .sort((a, b) => b.length - a.length);
}

/**
 * What two headings give the lower and the upper end of, where each starts with a word for its end and names the same kind of thing behind
 * it, both in one language: `De la note` and `Jusqu'à la note`, `Da nota` and `Até a nota`. By itself the first may mean any key.
 */
export function pairedHeadings(low: string, high: string): 'keys' | 'velocities' | undefined {
  const [lower, upper] = [wordsOf(low), wordsOf(high)];
  if (Math.max(lower.length, upper.length) > mostWords) return undefined;
  for (const words of endWords) {
    const subject = subjectBehind(lower, words.low, words);
    if (subject && subject === subjectBehind(upper, words.high, words)) return subject;
  }
  return undefined;
}

function subjectBehind(
  heading: readonly string[],
  starts: readonly (readonly string[])[],
  { keys, velocities }: EndWords,
): 'keys' | 'velocities' | undefined {
  const start = starts.find((words) => words.every((word, at) => heading[at] === word));
  if (!start) return undefined;
  const rest = heading.slice(start.length);
  const isOf = (list: readonly string[]) => (word: string) => list.some((one) => isForm(word, one));
  const subjects = rest.filter((word) => isOf(keys)(word) || isOf(velocities)(word));
  const [subject, ...others] = subjects;
  if (subject === undefined || others.length > 0) return undefined;
  if (rest.some((word) => word !== subject && word.length > longestArticle)) return undefined;
  return isOf(keys)(subject) ? 'keys' : 'velocities';
}
