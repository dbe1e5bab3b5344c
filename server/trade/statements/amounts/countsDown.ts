import { readHeading } from '../../headings/headings';
import {
  attenuationStems,
  belowFullLevel,
  greaterNumbers,
  otherLevels,
  positiveNumbers,
  withoutMinus,
} from '../../languages/quieterWords';
import { bareWord } from '../../languages/spelling';
import { saysOf } from '../../phrases/toldWords';
import { turningWords } from '../../turningWords';

/** A text that says that levels are numbers by which samples are quieter. */
export interface CountsDown {
  /** Whether it says so of numbers above 0, so that those below make louder. */
  isSigned: boolean;
  text: string;
}

const longest = 2000;
const longestSentence = 300;
/** The minus sign that stands before the unit once for all numbers: `in -dB`. */
const minusUnit =
  /(?:^|[\s([])(?:[-\u2013]\s?|(?:minus|negative|neg\.?|negativ\p{L}*|moins|menos|meno)\s)db(?!\p{L})/u;
/** A number with what it means: `6 = 6 dB quieter`, `3 means -3 dB`. */
const example =
  /(?<![\p{L}\d.,+-])(\d{1,2}(?:[.,]\d+)?)\s*(?:=|:|->|→|is|means|ist|heisst|bedeutet|est|signifie|es|significa|è|betekent|znamena|oznacza|betyder|betyr|tarkoittaa|jelent|inseamna|znaci|означает|значит|означає)\s*(?:(?:o|um|de|di|na|med|by|cu|на)\s)?(-)?\s?(\d{1,2}(?:[.,]\d+)?)\s*db(?!\p{L})(.{0,30})/u;
/** An amount in dB, which a sentence takes off some zones or all. */
const amount = /\d\s?(?:db|decibels?|dezibel|дб)(?!\p{L})/u;
const nothing = /(?<![\d.,])0\s?(?:db|decibels?|dezibel|дб)(?!\p{L})/gu;
const turning = new RegExp(turningWords('not', 'except', 'none', 'already'), 'iu');

/** The sentences that say that levels count how much quieter samples are: `Levels are dB of attenuation`. */
export function countsDownIn(texts: readonly string[]): CountsDown[] {
  const found: CountsDown[] = [];
  for (const whole of texts)
    for (const sentence of whole.slice(0, longest).split(/[.!?](?=\s|$)|[\n\r;。！]/u)) {
      const text = sentence.trim();
      if (text === '' || text.length > longestSentence) continue;
      const isSigned = countsDown(text);
      if (isSigned !== undefined) found.push({ isSigned, text });
    }
  return found;
}

/** Whether a sentence says so, and of numbers above 0; `undefined` where it does not. */
function countsDown(sentence: string): boolean | undefined {
  const text = bareWord(sentence.replaceAll('\u2212', '-')).replace(nothing, ' ');
  const [shown, number, sign, decibels, rest = ''] = example.exec(text) ?? [];
  if (shown !== undefined && number === decibels) {
    const isQuieter = sign === '-' || saysOf(rest, 'quieter') || belowFullLevel.test(`db ${rest.trim()}`);
    if (isQuieter && !saysOf(rest, 'louder')) return false;
  }
  const isLeftOut = withoutMinus.test(text);
  if (amount.test(text) || (!isLeftOut && turning.test(sentence))) return undefined;
  if (otherLevels.test(text) && !attenuationStems.test(text)) return undefined;
  const isOfLevels = /(?<!\p{L})db(?!\p{L})/u.test(text) || namesLevels(sentence);
  if (!isOfLevels) return undefined;
  if (isLeftOut || minusUnit.test(text) || attenuationStems.test(text) || belowFullLevel.test(text))
    return false;
  if (!saysOf(text, 'quieter')) return undefined;
  if (positiveNumbers.test(text)) return true;
  return greaterNumbers.test(text) && !saysOf(text.replace(greaterNumbers, ' '), 'louder')
    ? false
    : undefined;
}

/** Whether a sentence names a column of levels. */
function namesLevels(sentence: string): boolean {
  const words = sentence.match(/\p{L}+/gu) ?? [];
  return words.slice(0, 12).some((word) => {
    const heading = word.length > 2 ? (readHeading(word) ?? readHeading(word.replace(/s$/, ''))) : undefined;
    return heading?.meaning === 'volume' && !heading.likeness;
  });
}
