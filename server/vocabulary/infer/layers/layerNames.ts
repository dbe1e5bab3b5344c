import { nameWords } from '../words/nameWords';
import { conceptsOf } from '../words/tradeWords';

/** Beginnings of words for layers of a sound, which lie in one another where they are struck softly or hard (from memory). */
const layerStem =
  /^(?:layer|lyr$|schicht|stufe|ebene|couche|niveau|nivel|livel|strat[oi]|estrat|capas?$|camada|laag$|lagen$|lager|skikt|lag$|taso|kerro|warstw|poziom|vrstv|uroven|слой|слоя|слоев|уров|level|step|grade)/u;
/** Words that say that a number stands there. */
const numberWords: ReadonlySet<string> = new Set(
  'no nr num n number numero numer nummer id idx index i pos position value val which rank order'.split(' '),
);

/** The words by which a place or its element may be named after layers. */
export function layerNameOf(own: readonly string[], element: string): readonly string[] {
  return own.every((word) => numberWords.has(word)) ? nameWords(element) : own;
}

/** Whether words name a layer, of velocities or of what sounds together. */
export function nameLayers(words: readonly string[]): boolean {
  return words.some((word) => layerStem.test(word));
}

/** Words that may count how often a sound was struck, too. */
const strikes: ReadonlySet<string> = new Set(
  'hit hits blow strike touch toucher tocco toque aanraking'.split(' '),
);

/** Whether words name velocities, and nothing else but layers and numbers. */
export function nameVelocities(words: readonly string[]): boolean {
  const isVelocity = (word: string) => conceptsOf(word)?.concepts.join() === 'vel' && !strikes.has(word);
  return (
    words.some(isVelocity) &&
    words.every((word) => isVelocity(word) || layerStem.test(word) || isCountWord(word))
  );
}

function isCountWord(word: string): boolean {
  return numberWords.has(word) || conceptsOf(word)?.concepts.join() === 'count';
}

/** Whether a sentence speaks of layers, or of what is named so. */
export function speaksOfLayers(sentence: string, words: readonly string[]): boolean {
  const said = wordsIn(sentence);
  return said.some(
    (one) => layerStem.test(one) || words.some((word) => word.length > 2 && one.startsWith(word.slice(0, 5))),
  );
}

function wordsIn(sentence: string): string[] {
  return sentence.match(/[\p{L}\p{N}]+/gu)?.flatMap((word) => nameWords(word)) ?? [];
}
