import { isLoopWord } from '../../headings/headingStems';
import { toFileEnd } from '../../readings/fileEnds';

/** Words that set an end before that, or speak of some loops alone. */
const otherwise =
  /\d|(?<!\p{L})(?:before|short of|not|no|never|except|but|unless|some|only|vor|nicht|kein\p{L}*|nur|au\u00dfer|manche|einige|avant|pas|sauf|seulement|certain\p{L}*|antes|excepto|salvo|solo|s\u00f3lo|algun\p{L}*|prima|non|tranne|alcun\p{L}*|n\u00e3o|exceto|apenas|voor|niet|behalve|alleen|f\u00f6re|inte|utom|f\u00f8r|ikke|undtagen|ennen|ei|paitsi|przed|nie|opr\u00f3cz|p\u0159ed|krom\u011b|перед|не|кроме|de\u011fil|hari\u00e7|nem|kiv\u00e9ve)(?!\p{L})|前|不|ない|않|除|제외/iu;
const unspacedLoop = /ループ|循环|循環|루프/u;
const longest = 2000;

/** The sentence that says that loops end with their files; `undefined` where none does. */
export function loopsToEndIn(texts: readonly string[]): string | undefined {
  for (const text of texts)
    for (const sentence of text.slice(0, longest).split(/[.!?;](?=\s|$)|[\n\r。；]+/u)) {
      const said = sentence.replace(/\s+/g, ' ').trim();
      if (saysLoopsGoToEnd(said)) return said;
    }
  return undefined;
}

/** Whether a sentence says that loops end with their files. */
export function saysLoopsGoToEnd(sentence: string): boolean {
  if (!toFileEnd.test(sentence) || otherwise.test(sentence)) return false;
  return unspacedLoop.test(sentence) || (sentence.match(/\p{L}+/gu) ?? []).some(isLoopWord);
}
