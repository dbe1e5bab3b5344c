import { bareWord, wordsOf } from '../../../trade/languages/spelling';

/** Shorter words say nothing, or are articles. */
const shortestWord = 3;
/** A word with an ending agrees with another in so many letters at least, and lacks so many of its own at most (our choice). */
const leastAlike = 4;
const mostEnding = 2;
/** What makes up a compound with the name of a group, as `Raummikrofon` and `Rumsfiler`. */
const ofCompound =
  /(?<=^.{3,})s?(?:datei|fil(?:e|er|ene|erna)?(?!\p{L})|mikro|micro|mic|mik(?!\p{L})|sampl|sp\u00e5r|spor|bestand|opnam|aufnahm|schicht|zone|lager|ljud|lyd)\p{L}*$/u;
const unspaced = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}\p{Script=Hangul}]/u;

/**
 * The groups that a text names, by words that not all of them have: one, or several with the same words. None where it names none, `undefined`
 * where it names different ones.
 */
export function groupsNamedIn(groups: readonly string[], text: string): string[] | undefined {
  const named = groups.filter((group) => group !== '');
  const words = named.map((group) => new Set(wordsOf(group).map(nameIn).filter(isTelling)));
  const shared =
    words.length < 2 ? [] : [...(words[0] ?? [])].filter((word) => words.every((one) => one.has(word)));
  const said = wordsOf(text).map(nameIn);
  const bare = bareWord(text);
  const found = words.map((own) =>
    [...own]
      .filter(
        (word) =>
          !shared.includes(word) &&
          (unspaced.test(word) ? bare.includes(word) : said.some((one) => isForm(one, word))),
      )
      .join(' '),
  );
  const most = found.reduce((longest, one) => (one.length > longest.length ? one : longest), '');
  if (most === '') return [];
  // `close left` names one of two groups that `close` alone names both.
  const others = found.filter((one) => one !== '' && one !== most);
  if (others.some((one) => !one.split(' ').every((word) => most.split(' ').includes(word)))) return undefined;
  return named.filter((_, at) => found[at] === most);
}

/** What a compound says besides its word for a file or a microphone. */
function nameIn(word: string): string {
  return word.replace(ofCompound, '');
}

function isTelling(word: string): boolean {
  return unspaced.test(word) || (word.length >= shortestWord && !/\d/.test(word));
}

/** Whether a word is another one with an ending of its own, or goes on as a compound does: `Raumdateien` for `Raum`. */
function isForm(said: string, word: string): boolean {
  if (said.startsWith(word)) return word.length >= leastAlike || said.length - word.length <= mostEnding;
  let alike = 0;
  while (alike < word.length && said[alike] === word[alike]) alike++;
  return alike >= leastAlike && word.length - alike <= mostEnding && said.length - alike <= leastAlike;
}
