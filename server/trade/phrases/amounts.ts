import { languages } from '../languages/languages';
import { wordsOf } from '../languages/spelling';
import { saysOf } from './toldWords';

const decibels = /(?<![\p{L}\d.,])([-+\u2212\u2013]?)\s?(\d+(?:[.,]\d+)?)\s?dB(?!\p{L})/giu;
const cents =
  /(?<![\p{L}\d.,])([-+\u2212\u2013]?)\s?(\d+(?:[.,]\d+)?)\s?(?:(?:cent\p{L}*|sent(?:ti\p{L}*)?|ct|цент\p{L}*)(?!\p{L})|¢|セント|音分|센트)/giu;

/** Words for tunings and levels in all languages, and small ones, beside which an amount without a sign goes up. */
const neutral: ReadonlySet<string> = new Set(
  languages.flatMap(({ phrases, fillers }) =>
    [
      ...(['tune', 'transpose', 'volume', 'deviation'] as const).flatMap((one) => phrases[one] ?? []),
      ...fillers,
      ...'plus with about around exactly roughly tuned tuning gets mit etwa genau gestimmt gestimmte avec environ accorde accordee con circa afinado afinada accordato met gestemd'.split(
        ' ',
      ),
    ].flatMap(wordsOf),
  ),
);
const longestFiller = 3;

/** An amount that a clause tells. */
export interface ToldAmount {
  amount: number;
  /** Whether it has no sign, and a word beside it that is not known may be the one that says which way it goes. */
  isOpen: boolean;
}

/**
 * The level in dB that a clause tells, by its sign or by a word for quieter or louder; one without either counts as it is written.
 * `undefined` where it tells none, several, or both ways at once.
 */
export function toldLevel(clause: string): ToldAmount | undefined {
  const [found, ...others] = clause.matchAll(decibels);
  if (!found || others.length > 0) return undefined;
  const isLouder = saysOf(clause, 'louder') || saysOf(clause, 'up');
  return amountOf(clause, found, isLouder, saysOf(clause, 'quieter') || saysOf(clause, 'down'));
}

/** A number of cents, and whether it says how far the sample is off: the tuning is then the opposite. */
export interface ToldCents extends ToldAmount {
  isDeviation: boolean;
}

/** The tuning in cents that a clause tells, as {@link toldLevel} does for levels. */
export function toldCents(clause: string): ToldCents | undefined {
  const [found, ...others] = clause.matchAll(cents);
  if (!found || others.length > 0) return undefined;
  const [isSharp, isFlat] = [saysOf(clause, 'sharp'), saysOf(clause, 'flat')];
  const isDeviation = isSharp || isFlat;
  const [isUp, isDown] = isDeviation ? [isSharp, isFlat] : [saysOf(clause, 'up'), saysOf(clause, 'down')];
  const told = amountOf(clause, found, isUp, isDown);
  return told && { ...told, isDeviation };
}

function amountOf(
  clause: string,
  [whole, sign = '', digits = '']: RegExpExecArray,
  isMore: boolean,
  isLess: boolean,
): ToldAmount | undefined {
  const size = Number(digits.replace(',', '.'));
  if (size === 0) return { amount: 0, isOpen: false };
  if (sign === '+') return isLess && !isMore ? undefined : { amount: size, isOpen: false };
  if (sign !== '') return { amount: 0 - size, isOpen: false };
  if (isMore && isLess) return undefined;
  const isSaid = isMore || isLess;
  const isOpen = !isSaid && wordsOf(clause.replace(whole, ' ')).some(mayTellWay);
  return { amount: isLess ? 0 - size : size, isOpen };
}

function mayTellWay(word: string): boolean {
  return word.length > longestFiller && !neutral.has(word);
}
