import {
  articleWord,
  copulaWord,
  numeralWord,
  onwardWord,
  ordinalWord,
  puttingVerb,
  sampleNouns,
} from '../../../trade/languages/fileSentenceWords';
import { languages } from '../../../trade/languages/languages';
import { bareWord } from '../../../trade/languages/spelling';

/** Words for a file or a sample; others, such as one for a sound, may as well be the first of a name. */
const fileNoun: ReadonlySet<string> = new Set([
  ...sampleNouns,
  ...languages.flatMap(({ phrases }) =>
    (phrases.sample ?? []).filter((one) => /^\p{L}*(?:datei|file|fil)$/iu.test(one)).map(bareWord),
  ),
]);
const mostWords = 8;

/**
 * How much at the end of what stands before a file's name leads up to it and is no part of it: `Use`, `dann nimm die Datei`. 0 where the
 * words may be part of the name, as in `Take 3.wav`.
 */
export function wordsBeforeFile(before: string, name: string): number {
  if (/^\P{L}{0,4}\.\w{1,5}$/u.test(name)) return 0;
  const words = [...before.matchAll(/[^\s,;:]+/gu)];
  let at = words.length;
  const takes = (is: (word: string) => boolean) => {
    const isTaken = at > 0 && words.length - at < mostWords && is(bareWord(words[at - 1][0]));
    if (isTaken) at--;
    return isTaken;
  };
  const isNamed = takes((word) => fileNoun.has(word));
  takes((word) => articleWord.test(word));
  const isAsked = takes((word) => puttingVerb.test(word));
  if (!isNamed && !isAsked) return 0;
  while (takes((word) => onwardWord.test(word)));
  return before.length - (words[at]?.index ?? before.length);
}

/**
 * How much at the beginning of what stands before a file's ending says that a file follows, whose name may have blanks: `and the last one
 * is`. 0 where it does not.
 */
export function introducesFile(before: string): number {
  const words = [...before.matchAll(/\S+/gu)].slice(0, mostWords);
  let at = 0;
  const takes = (is: (word: string) => boolean) => {
    const isTaken = at < words.length && is(bareWord(words[at][0]));
    if (isTaken) at++;
    return isTaken;
  };
  while (takes((word) => onwardWord.test(word)));
  takes((word) => articleWord.test(word));
  const isCounted = takes((word) => ordinalWord.test(word));
  const isNamed = takes((word) => fileNoun.has(word) || numeralWord.test(word));
  if ((!isCounted && !isNamed) || !takes((word) => copulaWord.test(word))) return 0;
  takes((word) => copulaWord.test(word));
  return words[at]?.index ?? before.length;
}
