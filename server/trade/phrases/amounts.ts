import { saysOf } from './toldWords';

const decibels = /(?<![\p{L}\d.,])([-+\u2212\u2013]?)\s?(\d+(?:[.,]\d+)?)\s?dB(?!\p{L})/giu;
const cents =
  /(?<![\p{L}\d.,])([-+\u2212\u2013]?)\s?(\d+(?:[.,]\d+)?)\s?(?:(?:cent\p{L}*|sent(?:ti\p{L}*)?|ct|цент\p{L}*)(?!\p{L})|¢|セント|音分|센트)/giu;

/**
 * The level in dB that a clause tells, by its sign or by a word for quieter or louder; one without either counts as it is written.
 * `undefined` where it tells none, several, or both ways at once.
 */
export function toldLevel(clause: string): number | undefined {
  const [found, ...others] = clause.matchAll(decibels);
  if (!found || others.length > 0) return undefined;
  return way(found[1], found[2], saysOf(clause, 'louder'), saysOf(clause, 'quieter'));
}

/** A number of cents, and whether it says how far the sample is off: the tuning is then the opposite. */
export interface ToldCents {
  cents: number;
  isDeviation: boolean;
}

/** The tuning in cents that a clause tells, as {@link toldLevel} does for levels. */
export function toldCents(clause: string): ToldCents | undefined {
  const [found, ...others] = clause.matchAll(cents);
  if (!found || others.length > 0) return undefined;
  const [isSharp, isFlat] = [saysOf(clause, 'sharp'), saysOf(clause, 'flat')];
  const isDeviation = isSharp || isFlat;
  const [isUp, isDown] = isDeviation ? [isSharp, isFlat] : [saysOf(clause, 'up'), saysOf(clause, 'down')];
  const amount = way(found[1], found[2], isUp, isDown);
  return amount === undefined ? undefined : { cents: amount, isDeviation };
}

function way(sign = '', digits = '', isMore: boolean, isLess: boolean): number | undefined {
  const size = Number(digits.replace(',', '.'));
  if (size === 0) return 0;
  if (sign === '+') return isLess && !isMore ? undefined : size;
  if (sign !== '') return 0 - size;
  if (isMore && isLess) return undefined;
  return isLess ? 0 - size : size;
}
