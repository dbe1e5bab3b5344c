const ascii = /^[\x20-\x7e]*$/;

/** A word as words are compared: lower case, without accents and without white space around it. */
export function bareWord(text: string): string {
  const word = text.trim().toLowerCase();
  return ascii.test(word) ? word : withoutAccents(word).trim();
}

/** The words of a heading in lower case without accents, parted at signs and at capitals as in `loKey`. */
export function wordsOf(text: string): string[] {
  const parted = text.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2').replaceAll('#', ' number ');
  return (withoutAccents(parted.toLowerCase()).match(/[\p{L}\p{N}]+/gu) ?? []) as string[];
}

/** Compatibility forms, such as full-width letters, become the usual ones. */
function withoutAccents(text: string): string {
  return text.normalize('NFKD').replace(/\p{M}/gu, '').replaceAll('ß', 'ss');
}
