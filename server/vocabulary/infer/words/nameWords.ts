import { bareWord } from '../../../trade/languages/spelling';

const longestName = 80;
const ascii = /^[\x20-\x7e]*$/;

/**
 * The words of the name of an element or attribute in lower case without accents: parted at signs, at capitals as in
 * `loKey` or `MIDIKey`, and between letters and digits. A namespace prefix does not count.
 */
export function nameWords(name: string): string[] {
  if (name.length > longestName) return [];
  const local = name.slice(name.indexOf(':') + 1);
  const parted = local
    .replace(/dB(?!\p{Ll})/gu, 'Db')
    .replace(/(\p{Ll}|\d)(\p{Lu})/gu, '$1 $2')
    .replace(/(\p{Lu})(\p{Lu}\p{Ll})/gu, '$1 $2')
    .replace(/(\p{L})(\d)/gu, '$1 $2')
    .replace(/(\d)(\p{L})/gu, '$1 $2');
  const words = parted.match(/[\p{L}\p{M}]+|\d+/gu) ?? [];
  return words.map((word) => (ascii.test(word) ? word.toLowerCase() : bareWord(word)));
}
