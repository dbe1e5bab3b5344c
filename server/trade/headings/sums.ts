import { languages } from '../languages/languages';
import { bareWord } from '../languages/spelling';
import { wordsInText } from '../languages/wordPattern';

const totals: ReadonlySet<string> = new Set(languages.flatMap((language) => language.totals.map(bareWord)));
/** Letters at the start of a text, perhaps of two words: `Total`, `Grand total`. */
const startWords = /^\p{L}+(?:[\s-]{1,2}\p{L}+)?/u;
const betweenWords = /[\s-]+/u;

/** Whether a row that starts with this text sums up others; words for a sum may be two. */
export function isTotal(text: string): boolean {
  const [first, second] = text.slice(0, 40).match(startWords)?.[0].split(betweenWords) ?? [];
  if (/^[\u03a3\u2211\u00d8](?!\p{L})/u.test(text)) return true;
  if (first === undefined) return false;
  return totals.has(bareWord(first)) || (second !== undefined && totals.has(bareWord(`${first} ${second}`)));
}

/** No word for a sum with its number is longer (our choice). */
const longestAlone = 60;
const countedFiles = new RegExp(
  String.raw`^\d{1,5}\s?(?:${wordsInText(languages.flatMap(({ files }) => files))})`,
  'iu',
);

/** Whether a text counts files: `12 files`. */
export function countsFiles(text: string): boolean {
  return countedFiles.test(text.slice(0, 40));
}

/** Whether a text is a word for a sum, for the least or for the greatest, and nothing else but a number. */
export function isTotalAlone(text: string): boolean {
  const whole = text.trim();
  if (whole.length > longestAlone) return false;
  const bare = whole.replace(/[\s:.=(]*\d*[\s:.=)]*$/u, '');
  return (
    bare.length < 30 &&
    (totals.has(bareWord(bare.replace(/[\s-]+/gu, ' '))) ||
      /^(?:[\u03a3\u2211\u00d8]|min|max|minimum|maximum)$/iu.test(bare))
  );
}
