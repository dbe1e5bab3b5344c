import { panWord, sidePhrase, withoutLead, withoutLink } from '../languages/cellWords';
import { readNumber } from './numberReading';

const longest = 32;
/** An arrow to the left before, or to the right behind a number. */
const arrows =
  /^(?:[<\u25c0\u25c2\u25c4\u2190\u2039]\s?(\d.*)|(\d.*?)\s?[>\u25b6\u25b8\u25ba\u2192\u203a])$/u;

/**
 * Reads a pan position, −100 (left) to 100 (right): a signed number, `L50`, `20 R`, `50 % L`, `◀50`, `C`, `left`, `Mitte`.
 * `undefined` for anything else.
 */
export function readPan(text: string): number | undefined {
  const word = text.trim();
  if (word.length > longest) return undefined;
  const number = readNumber(word);
  if (number) return number.unit === undefined || number.unit === 'percent' ? number.number : undefined;
  const pointed = arrows.exec(word);
  const amount = pointed && readNumber(pointed[1] ?? pointed[2]);
  if (pointed && amount && (amount.unit === undefined || amount.unit === 'percent'))
    return pointed[1] === undefined ? amount.number : 0 - amount.number;
  const side = panWord(word.replace(/^<|>$|(?<=\p{L}{2})\.$/gu, ''));
  if (side === 'centre') return 0;
  if (side) return side === 'left' ? -100 : 100;
  const phrase = /\d/.test(word) ? undefined : sidePhrase(word);
  if (phrase) return (phrase.side === 'left' ? -100 : 100) * phrase.share;
  const lead = /^(\p{L}+)(?:(?<=\p{L}{2})\.)?\s{0,2}[:=]?\s{0,2}(%?\d.*)$/u.exec(withoutLead(word));
  const trail = /^(%?\d.*?)\s?(\p{L}+)(?:(?<=\p{L}{2})\.)?$/u.exec(word);
  const named = panWord(lead?.[1] ?? trail?.[2] ?? '');
  const reading = named && readNumber(withoutLink(lead?.[2] ?? trail?.[1] ?? ''));
  if (!reading || (reading.unit !== undefined && reading.unit !== 'percent')) return undefined;
  if (named === 'centre') return reading.number === 0 ? 0 : undefined;
  return named === 'left' ? 0 - reading.number : reading.number;
}

/** Whether a text that {@link readPan} reads names a side, by a letter, a word or an arrow. */
export function hasSide(text: string): boolean {
  return !readNumber(text.trim());
}
