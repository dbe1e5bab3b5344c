import type { Numbers, ScaleReading } from './numbers';
import { areMultiplesOf, different, holdsNumber } from './numbers';

/**
 * How levels are counted: in dB or tenths of it, or as an amplitude of which 1, 100, 127 or 255 is the full one. Numbers up to
 * 127 are those of seven bits, as in MIDI.
 */
export type LevelScale = 'dB' | 'centibels' | 'factor' | 'percent' | 'sevenBits' | 'eightBits';

/** The number that stands for the full amplitude in the scales that are shares of it. */
export const fullLevels: Readonly<Record<Exclude<LevelScale, 'dB' | 'centibels'>, number>> = {
  factor: 1,
  percent: 100,
  sevenBits: 127,
  eightBits: 255,
};

/** Scales in words for people. */
export const levelScaleNames: Readonly<Record<LevelScale, string>> = {
  dB: 'dB',
  centibels: 'centibels',
  factor: 'a factor',
  percent: 'percent',
  sevenBits: '0 to 127',
  eightBits: '0 to 255',
};

/** How a level is counted, to go on in a sentence: `a level in dB`. */
export const levelScalePhrases: Readonly<Record<LevelScale, string>> = {
  dB: 'in dB',
  centibels: 'in centibels',
  factor: 'as a factor',
  percent: 'in percent',
  sevenBits: 'from 0 to 127',
  eightBits: 'from 0 to 255',
};

/** Levels above 0 dB are seldom greater (our choice). */
const mostDecibels = 24;
/** The least level that the open SFZ format documents for `volume`. */
const leastDecibels = -144;

const shares = ['factor', 'percent', 'sevenBits', 'eightBits'] as const;

/**
 * Decides how a column of levels counts, from all its numbers together: nothing is raised on a guess, so shares are of the
 * smallest full amplitude that none is above (our choice). `isAttenuation`: greater numbers are quieter.
 */
export function levelScale(numbers: Numbers, isAttenuation = false): ScaleReading<LevelScale> {
  const { least, greatest, negative, numeric } = numbers;
  const reading = (scale: LevelScale, confidence: number, reason: string, isOpen = true) =>
    ({ scale, isOpen, confidence, reason, others: othersOf(scale, numbers, isAttenuation) }) as const;
  const said = least === greatest ? `Only ${least} occurs.` : `All numbers lie from ${least} to ${greatest}.`;
  if (numeric === 0 || !Number.isFinite(greatest)) return reading('dB', 0.5, 'There are no numbers.', false);
  if (isAttenuation && negative === 0) return attenuation(numbers, said, reading);
  if (negative > 0) {
    if (least < leastDecibels) return reading('centibels', 0.6, `${said} No level in dB lies so low.`);
    if (greatest > mostDecibels) return reading('dB', 0.6, said);
    return reading('dB', 0.95, 'Numbers below 0 occur, which only dB have.', false);
  }
  if (least === 0 && greatest === 0)
    return reading('dB', 0.7, 'Only 0 occurs, which would be silence as a factor.', false);
  if (greatest <= 1) return factor(numbers, reading);
  return shareOf(numbers, said, reading);
}

/** A scale that is less likely is not taken. */
const likely = 0.6;

/**
 * How levels are read where nothing says how they count: by {@link levelScale}, or `isLeft` at 0 dB where the numbers leave it open and
 * could raise, or could be too many things.
 */
export function guessedLevels(
  numbers: Numbers,
  isAttenuation = false,
): ScaleReading<LevelScale> & { isLeft: boolean } {
  const guess = levelScale(numbers, isAttenuation);
  if (!guess.isOpen) return { ...guess, isLeft: false };
  const [greatest, least] = [numbers.greatest, numbers.least].map((level) =>
    decibelsOf(level, guess.scale, isAttenuation),
  );
  const isLeft = greatest > 0 || least > 0 || Number.isNaN(greatest + least) || guess.confidence < likely;
  return { ...guess, isLeft };
}

type Told = (
  scale: LevelScale,
  confidence: number,
  reason: string,
  isOpen?: boolean,
) => ScaleReading<LevelScale>;

function attenuation({ greatest, whole, numeric }: Numbers, said: string, reading: Told) {
  if (greatest > 0 - leastDecibels) return reading('centibels', 0.7, `${said} No level in dB lies so low.`);
  if (greatest < 1 && whole < numeric) return reading('dB', 0.6, said);
  return reading('dB', 0.85, 'It is named an attenuation, which is counted in dB.', false);
}

/** Numbers from 0 to 1. */
function factor(numbers: Numbers, reading: Told) {
  if (numbers.whole < numbers.numeric) return reading('factor', 0.92, 'All numbers lie from 0 to 1.');
  return reading('factor', 0.6, numbers.least === 1 ? 'Only 1 occurs.' : 'Only 0 and 1 occur.');
}

/** Numbers of which some are above 1 and none is below 0. */
function shareOf(numbers: Numbers, said: string, reading: Told) {
  const { least, greatest } = numbers;
  if (greatest <= 4 && least > 0 && numbers.whole < numbers.numeric)
    return reading('factor', 0.85, `All numbers lie around 1, from ${least} to ${greatest}.`);
  if (greatest <= mostDecibels) return reading(least === 0 ? 'dB' : 'percent', 0.55, said);
  if (greatest === 100) return reading('percent', 0.88, `${said} 100 is the full level.`);
  if (greatest === 127) return reading('sevenBits', 0.9, `${said} 127 is the greatest number of seven bits.`);
  if (greatest < 100 && areMultiplesOf(numbers, 5)) return reading('percent', 0.76, said);
  if (greatest <= 127) {
    const isRound = holdsNumber(numbers, 100) && areMultiplesOf(numbers, 5) && different(numbers, 3) > 2;
    return reading('sevenBits', isRound || greatest < 100 ? 0.6 : 0.78, said);
  }
  if (greatest === 255)
    return reading('eightBits', 0.85, `${said} 255 is the greatest number of eight bits.`);
  return reading('percent', 0.6, said);
}

function othersOf(scale: LevelScale, { greatest }: Numbers, isAttenuation: boolean): LevelScale[] {
  const likely = shares.filter((share) => share !== 'eightBits' || greatest > 127);
  const all: LevelScale[] = ['dB', ...likely, ...(isAttenuation ? (['centibels'] as const) : [])];
  return all.filter((one) => one !== scale);
}

/**
 * A level in dB. A share a of the amplitude is 20 · log10(a) dB (IEC 60027-3: levels of field quantities), rounded to
 * hundredths; minus infinity for none, NaN for one below 0. An attenuation counts down from 0 dB, one as a share is what
 * is missing to the full amplitude.
 */
export function decibelsOf(level: number, scale: LevelScale, isAttenuation = false): number {
  if (scale === 'dB' || scale === 'centibels') {
    const decibels = scale === 'dB' ? level : Math.round(level * 1e5) / 1e6;
    return isAttenuation ? 0 - decibels : decibels;
  }
  const share = level / fullLevels[scale];
  if (share < 0 || (isAttenuation && share > 1)) return Number.NaN;
  return Math.round(20 * Math.log10(isAttenuation ? 1 - share : share) * 100) / 100;
}
