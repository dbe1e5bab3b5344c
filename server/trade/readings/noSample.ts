import { languages } from '../languages/languages';
import { bareWord, isForm } from '../languages/spelling';
import { isUnspaced, oneOfWords } from '../languages/wordPattern';
import { standsInBrackets } from './stillToCome';

const longest = 40;
const signsAlone = /^[-\u2010-\u2015\u2212./]+$/u;
const edges =
  /^[\s"'\u201c\u201d\u201e\u00ab\u00bb()[\]<>{}\uff08\uff09\u3010\u3011_*-]+|[\s"'\u201c\u201d\u201e\u00ab\u00bb()[\]<>{}\uff08\uff09\u3010\u3011_*.!-]+$/gu;

const files: readonly string[] = languages.flatMap((language) => [
  ...language.files.map(bareWord),
  ...(language.parts.file ?? []).map(bareWord),
]);
/** Words for none, which are no names; and those that may be names too, unless they stand in brackets or files have endings. */
const nones: ReadonlySet<string> = new Set([
  ...['nil', 'n/a', 'null'],
  ...languages.flatMap(({ turning }) => turning.none.map(bareWord)).filter((word) => word.length > 3),
]);
const empties: ReadonlySet<string> = new Set([
  ...languages.flatMap(({ empty }) => empty.map(bareWord)),
  ...languages.flatMap(({ turning }) => [...turning.none, ...turning.without].map(bareWord)),
]);
const unspacedFile = new RegExp(`^${oneOfWords(files.filter(isUnspaced))}`, 'u');

/**
 * Whether a text in place of a sample's name says that there is none: `-`, `(empty)`, `<no sample>`, `kein Sample`. A word that may be a name,
 * as `empty`, counts alone where other names have endings.
 */
export function saysNoSample(text: string, othersHaveEndings: boolean): boolean {
  const whole = text.trim();
  if (whole === '' || whole.length > longest) return false;
  if (signsAlone.test(whole)) return true;
  const bare = bareWord(whole.replace(edges, ''));
  const words = bare.split(/\s+/u);
  const said = words.filter((word) => !files.some((file) => isForm(word, file))).join(' ');
  const isSure = othersHaveEndings || standsInBrackets(whole) || (said !== bare && said !== '');
  if (nones.has(said)) return true;
  return isSure && (empties.has(said) || empties.has(bare.replace(unspacedFile, '')));
}
