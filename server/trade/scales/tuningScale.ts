import type { Numbers, ScaleReading } from './numbers';
import { areMultiplesOf, holdsNumber } from './numbers';

/** How tunings are counted: in cents, in semitones, or as the ratio of two frequencies. */
export type TuningScale = 'cents' | 'semitones' | 'ratio';

/** All scales of tunings. */
export const tuningScales: readonly TuningScale[] = ['cents', 'semitones', 'ratio'];
/** Beyond an octave nobody counts fractions of semitones (our choice). */
const mostSemitones = 13;

/** Whole keys farther away are no tuning of a sample that still sounds like one (our choice). */
const mostCoarse = 48;

/** What a name says of a tuning: that it is a fine one, or one in whole keys. */
export type TuningName = 'fine' | 'coarse' | undefined;

/**
 * Decides how a column of tunings counts, from all its numbers together. Fractions below 1 are semitones: nobody sets a
 * quarter of a cent by hand (common practice). Where it stays open it is cents, the smaller change.
 */
export function tuningScale(numbers: Numbers, name?: TuningName): ScaleReading<TuningScale> {
  const { least, greatest, decimals, whole, numeric } = numbers;
  const reading = (scale: TuningScale, confidence: number, reason: string, isOpen = true) =>
    ({ scale, isOpen, confidence, reason, others: tuningScales.filter((one) => one !== scale) }) as const;
  if (numeric === 0) return reading('cents', 0.5, 'There are no numbers.', false);
  const most = Math.max(Math.abs(least), Math.abs(greatest));
  const isFractional = whole < numeric;
  const isNearOne =
    least > 0.4 && greatest < 2.1 && isFractional && (decimals >= 3 || holdsNumber(numbers, 1));
  if (isNearOne)
    return reading(
      'ratio',
      decimals >= 3 ? 0.93 : 0.7,
      `All numbers lie near 1, from ${least} to ${greatest}.`,
    );
  const said =
    least === greatest ? `All numbers are ${least}` : `The numbers lie from ${least} to ${greatest}`;
  if (most === 0) return reading('cents', 0.7, 'Only 0 occurs.', false);
  if (name === 'coarse') {
    if (most > mostCoarse) return reading('cents', 0.8, `${said}, too far for semitones.`);
    return reading('semitones', 0.9, `${said}, and the name speaks of a coarse tuning.`, false);
  }
  if (isFractional && most <= mostCoarse && name !== 'fine' && areOctavesWithFractions(numbers))
    return reading('semitones', 0.78, `${said}, whole octaves beside parts of a semitone.`);
  if (isFractional && most <= 1) return reading('semitones', 0.88, `${said}, with fractions.`);
  if (isFractional && most <= mostSemitones) return ofFractions(numbers, most, name, said, reading);
  if (most > mostSemitones) return reading('cents', 0.93, `${said}.`, false);
  if (name !== 'fine' && least === -12 && greatest === 12 && areMultiplesOf(numbers, 12))
    return reading('semitones', 0.8, `${said}, whole octaves as semitones.`);
  const isFine = name === 'fine';
  const reason = `${said}${isFine ? ', and the name speaks of a fine tuning' : ''}.`;
  return reading('cents', isFine ? 0.78 : 0.6, reason, !isFine);
}

/** Whether some numbers are whole octaves of semitones, none else is as great, and others lie below 1, as no cents do. */
function areOctavesWithFractions({ numbers }: Numbers): boolean {
  let [octaves, small] = [0, 0];
  for (let at = 0; at < numbers.length; at++) {
    const size = Math.abs(numbers[at]);
    if (size >= 12 && size % 12 !== 0) return false;
    if (size >= 12) octaves++;
    else if (size > 0 && size < 1) small++;
  }
  return octaves > 0 && small > 0;
}

type Told = (
  scale: TuningScale,
  confidence: number,
  reason: string,
  isOpen?: boolean,
) => ScaleReading<TuningScale>;

function ofFractions({ decimals }: Numbers, most: number, name: TuningName, said: string, reading: Told) {
  if (name === 'fine') return reading('cents', 0.8, `${said}, and the name speaks of a fine tuning.`);
  return decimals >= 2
    ? reading('semitones', most <= 1.5 ? 0.78 : 0.7, `${said}, with fractions.`)
    : reading('cents', 0.6, `${said}, with tenths.`);
}

/** A tuning in cents; a ratio r of frequencies is 1200 · log2(r) cents (ISO 80000-8: logarithmic frequency interval). */
export function centsOf(tuning: number, scale: TuningScale): number {
  if (scale === 'cents') return tuning;
  if (scale === 'semitones') return Math.round(tuning * 1e8) / 1e6;
  return tuning > 0 ? Math.round(1200 * Math.log2(tuning) * 100) / 100 : Number.NaN;
}
