const ascii = /^[\x20-\x7e]*$/;

/** A word as words are compared: lower case, without accents and without white space around it. */
export function bareWord(text: string): string {
  const word = text.trim().toLowerCase();
  return ascii.test(word) ? word : withoutAccents(word).trim();
}

/** A text with full-width and other compatibility characters, and the wave dash, as the usual ones. */
export function usualSigns(text: string): string {
  return ascii.test(text) ? text : text.normalize('NFKC').replaceAll('\u301c', '~');
}

/** Words that are as {@link wordsOf} gives them already. */
const plainWords = /^[a-z\d]+(?: [a-z\d]+)*$/;

/** The words of a heading in lower case without accents, parted at signs and at capitals as in `loKey`. */
export function wordsOf(text: string): string[] {
  if (plainWords.test(text)) return text.split(' ');
  const parted = text.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2').replaceAll('#', ' number ');
  return (withoutAccents(parted.toLowerCase()).match(/[\p{L}\p{N}]+/gu) ?? []) as string[];
}

/** Whether a word is another one, perhaps in its plural or with an ending of one or two letters. */
export function isForm(word: string, other: string): boolean {
  return word === other || (other.length > 3 && word.startsWith(other) && word.length <= other.length + 2);
}

/** At most so many words that are like one are of use. */
const mostAlike = 4;

/**
 * The words that another one is like but for slips of the fingers: one letter wrong, left out, put in or two that change places;
 * of long words two slips, if `most` allows them. Of words of three letters only two that change places count.
 */
export function wordsLike(word: string, known: ReadonlySet<string>, most: 1 | 2 = 2): string[] {
  if (word.length < 2 || word.length > 24) return [];
  let best: number = word.length >= 7 ? most : 1;
  let found: string[] = [];
  for (const other of known) {
    if (other.length < 3 || Math.abs(other.length - word.length) > best) continue;
    const isShort = word.length < 4 || other.length < 4;
    if (isShort && !areTurned(word, other) && !lacksVowel(word, other)) continue;
    const slips = slipsBetween(word, other, best);
    if (slips > best) continue;
    if (slips < best) found = [];
    best = slips;
    found.push(other);
  }
  return found.length <= mostAlike ? found : [];
}

/** Whether one word is the other without one of its vowels: `ky`. */
function lacksVowel(word: string, other: string): boolean {
  if (word.length < 2 || word.length !== other.length - 1) return false;
  return [...other].some(
    (letter, at) => 'aeiou'.includes(letter) && other.slice(0, at) + other.slice(at + 1) === word,
  );
}

/** Whether two letters beside one another have changed places. */
function areTurned(word: string, other: string): boolean {
  return word.length === other.length && [...word].sort().join() === [...other].sort().join();
}

/** The optimal string alignment distance (Damerau 1964), or more than `most`. */
function slipsBetween(one: string, other: string, most: number): number {
  let before: number[] = [];
  let row = Array.from({ length: other.length + 1 }, (_, at) => at);
  for (let at = 1; at <= one.length; at++) {
    const next = [at];
    for (let to = 1; to <= other.length; to++) {
      const isSame = one[at - 1] === other[to - 1];
      let least = Math.min(row[to] + 1, next[to - 1] + 1, row[to - 1] + (isSame ? 0 : 1));
      const isTurned = at > 1 && to > 1 && one[at - 1] === other[to - 2] && one[at - 2] === other[to - 1];
      if (isTurned) least = Math.min(least, before[to - 2] + 1);
      next.push(least);
    }
    if (Math.min(...next) > most) return most + 1;
    before = row;
    row = next;
  }
  return row[other.length];
}

/** Compatibility forms, such as full-width letters, become the usual ones, and letters with a stroke or without a dot plain ones. */
function withoutAccents(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replaceAll('ß', 'ss')
    .replaceAll('ı', 'i')
    .replaceAll('ł', 'l')
    .replaceAll('ø', 'o');
}
