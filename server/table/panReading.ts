import { panWord } from './languages/cellWords';
import { readNumber } from './numberValues';

const longest = 24;

/**
 * Reads a pan position, −100 (left) to 100 (right): a signed number, `L50`, `20 R`, `50 % L`, `C`, `left`, `Mitte`.
 * `undefined` for anything else.
 */
export function readPan(text: string): number | undefined {
  const word = text.trim();
  if (word.length > longest) return undefined;
  const number = readNumber(word);
  if (number) return number.unit === undefined || number.unit === 'percent' ? number.number : undefined;
  const side = panWord(word.replace(/^<|>$/g, ''));
  if (side === 'centre') return 0;
  if (side) return side === 'left' ? -100 : 100;
  const lead = /^([\p{L}]+)[\s:]?(\d.*)$/u.exec(word);
  const trail = /^(\d.*?)\s?([\p{L}]+)$/u.exec(word);
  const named = panWord(lead?.[1] ?? trail?.[2] ?? '');
  const reading = named && readNumber(lead?.[2] ?? trail?.[1] ?? '');
  if (!reading || (reading.unit !== undefined && reading.unit !== 'percent')) return undefined;
  if (named === 'centre') return reading.number === 0 ? 0 : undefined;
  return named === 'left' ? 0 - reading.number : reading.number;
}
