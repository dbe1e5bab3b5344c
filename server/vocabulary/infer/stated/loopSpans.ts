import { bareWord } from '../../../trade/languages/spelling';
import { rangesOf } from '../ranges/rangeText';
import type { Column } from '../values/column';
import { textsOf } from '../values/columnFacts';
import { conceptsOf } from '../words/tradeWords';

/** So many words lie between the word for the start of a loop and the one for its length. */
const mostBetween = 8;
/** So far behind a word for a number stands what is counted. */
const mostBehindNumber = 3;
/** What joins the first thing that two numbers say to the second one (from memory). */
const joints: ReadonlySet<string> = new Set(
  ', + / & and then plus followed und dann gefolgt et puis suivi y luego mas e poi seguito en dan och sedan og i a potem'.split(
    ' ',
  ),
);

/** Whether a sentence says that pairs of numbers are starts and lengths: `the first frame of the loop and its length`. */
export function saysStartAndLength(text: string): boolean {
  const words = wordsOf(text);
  return words.some((word, start) => {
    if (!is(word, 'start', 'first')) return false;
    for (let at = start + 1; at < words.length && at <= start + mostBetween; at++) {
      if (is(words[at], 'end', 'last')) return false;
      if (isLength(words, at)) return words.slice(start + 1, at).some((between) => joints.has(between));
    }
    return false;
  });
}

/** Whether two numbers in a place are the start and the length of a loop by such a sentence, which its name stands in. */
export function isLoopSpan(column: Column, text: string): boolean {
  const isLoop = (word: string) => is(word, 'loop');
  // What is called after the start alone, or the length alone, holds one number.
  if (column.own.every((word) => is(word, 'start', 'first')) || column.own.every((word) => is(word, 'len')))
    return false;
  return (column.own.some(isLoop) || wordsOf(text).some(isLoop)) && rangesOf(textsOf(column)) !== undefined;
}

function wordsOf(text: string): string[] {
  return (text.match(/[\p{L}\p{N}]+|[,+/&]/gu) ?? []).map(bareWord);
}

function is(word: string, ...wanted: readonly string[]): boolean {
  return conceptsOf(word)?.concepts.some((one) => wanted.includes(one)) === true;
}

/** Whether a word is one for a length, or for the number of what is counted behind it: `number of frames`. */
function isLength(words: readonly string[], at: number): boolean {
  if (is(words[at], 'len')) return true;
  const behind = words.slice(at + 1, at + 1 + mostBehindNumber);
  return is(words[at], 'num', 'count') && behind.some((word) => is(word, 'frames') || word === 'samples');
}
