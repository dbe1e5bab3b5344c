import { languages } from './languages/languages';
import { bareWord } from './languages/spelling';
import { isUnspaced, oneOfWords } from './languages/wordPattern';
import { noteName } from './readings/notePatterns';

const words = languages
  .flatMap(({ phrases }) => phrases.keyswitch ?? [])
  .flatMap((word) => [word, bareWord(word)])
  .map((word) => word.replaceAll(' ', '[ -]?'));
/** Words for key switches in all languages, one or several, as a part of a pattern that goes by `i` and `u`. */
export const switchWords: string = String.raw`(?:(?<!\p{L})${oneOfWords(words.filter((word) => !isUnspaced(word)))}(?:e?[sn])?(?!\p{L})|${oneOfWords(words.filter(isUnspaced))})`;
const small =
  'is|on|at|by|key|note|number|no|ist|auf|taste|est|sur|touche|es|en|tecla|nota|su|tasto|op|toets|på|tangent';
const between = String.raw`[^\p{L}\d\n]{0,3}(?:(?:${small})(?!\p{L})[^\p{L}\d\n]{0,3}){0,2}`;
const key = String.raw`(${noteName}[-\u2212]?\d|(?<!\d)\d{1,3})(?![\p{L}\d]|[.,]\d)`;
const inTitle = new RegExp(
  String.raw`[\s,;:([|/\u2013\u2014-]*${switchWords}${between}${key}[\s)\]]*(?:\(\d{1,3}\))?\)?`,
  'iu',
);
const signs = String.raw`[\s=#*:;,.~_|<>()[\]\u2013\u2014-]+`;
const around = new RegExp(`^${signs}|${signs}$`, 'gu');
/** A name of zones: a few words. */
const plainName = /^(?:\p{L}[\p{L}\p{M}\p{N} '\u2019&+-]{0,40})?$/u;

/** The key switch that a title or the name of a group gives, and what else it says: `bow, keyswitch 24`, `KS C0: bow`. */
export function switchInTitle(text: string): { key: string; name: string } | undefined {
  const found = inTitle.exec(text);
  if (!found) return undefined;
  return { key: found[1] ?? '', name: text.replace(found[0], ' ').replace(around, '').trim() };
}

/** Whether a line is the title of zones that a key switches to, and says nothing else than their name. */
export function isSwitchTitle(text: string): boolean {
  const said = switchInTitle(text);
  return said !== undefined && plainName.test(said.name);
}
