import { dynamicOf } from '../../dynamics';
import { loudnessEnd } from '../../headings/headingStems';

/** Which of numbered layers is the softest, and the sentence that says so. */
export interface StatedLayerOrder {
  is: 'softestFirst' | 'loudestFirst';
  text: string;
}

const longest = 2000;
/** Nobody records so many layers (our choice). */
const mostLayers = 32;
/** So far from its number a word for loudness stands: `layer 1 is always the softest`. */
const longestGap = 30;
const token = /(?<![\p{L}\d.,])\d{1,2}(?![\d.,]\d|\p{L})|\p{L}{1,20}/gu;
/** Between a number and letters of dynamics, which are other words elsewhere, and between a word and its number: `1 = p`. */
const isSign = /^\s*[=:(\u2192-]+>?\s*["'\u201c]?$/u;
/** How a sentence speaks of an order (from memory). */
const ordered =
  /(?<!\p{L})(?:from|order\p{L}*|ascend\p{L}*|descend\p{L}*|number\p{L}*|first|von|vom|nummer\p{L}*|numer\p{L}*|numm?[ée]r\p{L}*|reihenfolge|zuerst|geordnet|aufsteigend|absteigend|du|de|depuis|ordre|d['\u2019]abord|del|desde|orden\p{L}*|dal|dalla|ordin\p{L}*|ordem|van|volgorde|fr\u00e5n|fra|ordning|r\u00e6kkef\u00f8lge|od|kolejno\p{L}*|po\u0159ad\p{L}*|от|поряд\p{L}*)(?!\p{L})/iu;

interface Word {
  start: number;
  end: number;
  number: number | undefined;
  /** From soft to loud, where it speaks of loudness. */
  loudness: number | undefined;
}

const [softWord, loudWord] = [dynamicOf('p'), dynamicOf('f')];

/**
 * Reads in which order layers are numbered: `1 = softest, 3 = loudest`, `layer 1 is the loudest`, `numbered from soft to loud`;
 * `undefined` where no text says it. Only sentences that `fits` accepts are looked at.
 */
export function layerOrderIn(
  texts: readonly string[],
  fits: (sentence: string) => boolean = () => true,
): StatedLayerOrder | undefined {
  for (const whole of texts)
    for (const sentence of whole.slice(0, longest).split(/[.!?](?=\s|$)|[\n\r]{2,}/u)) {
      const text = sentence.replace(/\s+/g, ' ').trim();
      const is = fits(text) ? orderIn(text) : undefined;
      if (is) return { is, text };
    }
  return undefined;
}

function orderIn(text: string): StatedLayerOrder['is'] | undefined {
  const words = wordsIn(text);
  const loud = words.filter(({ loudness }) => loudness !== undefined);
  if (loud.length === 0) return undefined;
  const pairs = pairsOf(text, words);
  if (pairs.length > 1) {
    const [first, last] = [pairs[0], pairs.at(-1)];
    if (first && last && first.loudness !== last.loudness)
      return first.loudness < last.loudness ? 'softestFirst' : 'loudestFirst';
  }
  const [only] = pairs;
  if (only) {
    const isSoft = only.loudness <= softWord;
    return isSoft === only.number <= 1 ? 'softestFirst' : 'loudestFirst';
  }
  const [first, second] = loud;
  if (words.some(({ number }) => number !== undefined) || !ordered.test(text)) return undefined;
  if (first?.loudness === undefined || second?.loudness === undefined || first.loudness === second.loudness)
    return undefined;
  return first.loudness < second.loudness ? 'softestFirst' : 'loudestFirst';
}

function wordsIn(text: string): Word[] {
  const words: Word[] = [];
  for (const { index, 0: written } of text.matchAll(token)) {
    const number = /^\d/.test(written) ? Number(written) : undefined;
    const loudness = number === undefined ? loudnessOf(text, written, index) : undefined;
    const isTelling = loudness !== undefined || (number !== undefined && number <= mostLayers);
    if (isTelling) words.push({ start: index, end: index + written.length, number, loudness });
  }
  return words;
}

function loudnessOf(text: string, word: string, index: number): number | undefined {
  const letter = word.length < 5 ? dynamicOf(word) : -1;
  if (letter >= 0) return isSign.test(/\D*$/.exec(text.slice(0, index))?.[0] ?? '') ? letter : undefined;
  const end = loudnessEnd(word);
  return end && (end === 'soft' ? softWord : loudWord);
}

/** Numbers with the word for loudness behind each, or before it where the text begins with such a word; by number. */
function pairsOf(text: string, words: readonly Word[]): { number: number; loudness: number }[] {
  const step = words[0]?.number === undefined ? -1 : 1;
  return words
    .flatMap((word, at) => {
      const other = words[at + step];
      if (word.number === undefined || other?.loudness === undefined) return [];
      const gap = step > 0 ? text.slice(word.end, other.start) : text.slice(other.end, word.start);
      const isNear = step > 0 ? gap.length <= longestGap : isSign.test(gap);
      return isNear ? [{ number: word.number, loudness: other.loudness }] : [];
    })
    .sort((one, other) => one.number - other.number);
}
