import type { Numbers, ScaleReading } from './numbers';
import { different, holdsNumber } from './numbers';

/** The numbers for left, centre and right. */
export type PanScale = readonly [left: number, centre: number, right: number];

const hundred: PanScale = [-100, 0, 100];
const one: PanScale = [-1, 0, 1];
const sevenBits: PanScale = [0, 64, 127];
const half: PanScale = [0, 0.5, 1];
const halfHundred: PanScale = [0, 50, 100];
const fifty: PanScale = [-50, 0, 50];
const sixtyFour: PanScale = [-64, 0, 63];
const even64: PanScale = [-64, 0, 64];
const wide: PanScale = [-127, 0, 127];
const scales: readonly PanScale[] = [
  hundred,
  one,
  sevenBits,
  half,
  halfHundred,
  fifty,
  sixtyFour,
  even64,
  wide,
];

type Told = (scale: PanScale, confidence: number, reason: string) => ScaleReading<PanScale>;

/** From this confidence on the numbers settle their scale. */
const sure = 0.75;

/** Decides how a column of pan positions counts, from all its numbers together. `inPercent`: they are percentages. */
export function panScale(numbers: Numbers, inPercent = false): ScaleReading<PanScale> {
  const { least, greatest, negative, numeric } = numbers;
  const reading: Told = (scale, confidence, reason) => ({
    scale,
    isOpen: confidence < sure || scale !== hundred,
    confidence,
    reason,
    others: scales.filter(
      (other) =>
        other !== scale && least >= Math.min(other[0], other[2]) && greatest <= Math.max(other[0], other[2]),
    ),
  });
  if (numeric === 0) return reading(hundred, 0.5, 'There are no numbers.');
  const most = Math.max(Math.abs(least), Math.abs(greatest));
  const said =
    least === greatest ? `All numbers are ${least}` : `The numbers lie from ${least} to ${greatest}`;
  if (least === greatest && (most === 0 || negative === 0)) {
    const centred = scales.find(([, centre]) => centre === least && centre !== 0);
    return reading(centred ?? hundred, centred ? 0.65 : 0.6, `Only ${least} occurs.`);
  }
  if (inPercent) {
    if (negative > 0) return reading(hundred, 0.95, 'The numbers are followed by a percent sign.');
    const isAround = holdsNumber(numbers, 50) && least < 50 && greatest > 50;
    const centre = isAround ? ', with 50 for the centre' : '';
    return reading(halfHundred, isAround ? 0.8 : 0.6, `${said} percent${centre}.`);
  }
  return negative > 0 ? signed(numbers, most, said, reading) : unsigned(numbers, said, reading);
}

function signed(numbers: Numbers, most: number, said: string, reading: Told): ScaleReading<PanScale> {
  const { least, greatest, whole, numeric } = numbers;
  if (most <= 1) return reading(one, whole < numeric || different(numbers, 3) > 2 ? 0.95 : 0.8, `${said}.`);
  if (least === -64 && greatest <= 64)
    return reading(
      greatest === 64 ? even64 : sixtyFour,
      0.9,
      `${said}, and -64 is the left end of a number of seven bits.`,
    );
  if (greatest === 63 && least >= -64)
    return reading(sixtyFour, 0.85, `${said}, and 63 is the right end of a number of seven bits.`);
  if (most === 50) return reading(fifty, 0.76, `${said}, as far to the left as to the right.`);
  if (most > 100) return reading(most <= 127 ? wide : hundred, 0.7, `${said}.`);
  return reading(hundred, most === 100 ? 0.97 : most > 64 ? 0.85 : 0.76, `${said}.`);
}

function unsigned(numbers: Numbers, said: string, reading: Told): ScaleReading<PanScale> {
  const { least, greatest, whole, numeric } = numbers;
  if (greatest <= 1) {
    const isCentred = holdsNumber(numbers, 0.5) || (least < 0.5 && greatest > 0.5);
    return reading(half, isCentred && whole < numeric ? 0.9 : 0.6, `${said}.`);
  }
  const [has50, has64] = [holdsNumber(numbers, 50), holdsNumber(numbers, 64)];
  if (greatest > 100 && greatest <= 127)
    return reading(sevenBits, has64 ? 0.95 : 0.85, `${said}${has64 ? ', with 64 for the centre' : ''}.`);
  if (greatest === 128) return reading([0, 64, 128], 0.85, `${said}.`);
  if (has64 && !has50) {
    const isAround = least < 64 && greatest > 64;
    return reading(sevenBits, isAround ? 0.85 : 0.65, `${said}, with 64 for the centre.`);
  }
  if (has50 && !has64) {
    const isAround = greatest === 100 || (least < 50 && greatest > 50);
    return reading(halfHundred, isAround ? 0.85 : 0.65, `${said}, with 50 for the centre.`);
  }
  if (holdsNumber(numbers, 0)) return reading(hundred, 0.6, `${said}, and none is below 0.`);
  return reading(greatest > 64 && greatest <= 127 ? sevenBits : hundred, 0.5, `${said}.`);
}

/**
 * Decides how far out the numbers beside letters for the sides go, as in `50R`: the number for the outermost position.
 * `inPercent`: they are percentages.
 */
export function sidedPanScale(greatest: number, inPercent = false): ScaleReading<number> {
  const ends = [50, 63, 64, 100, 127].filter((end) => end >= greatest);
  const end =
    greatest > 100
      ? 127
      : greatest === 50 && !inPercent
        ? 50
        : greatest === 63 || greatest === 64
          ? greatest
          : 100;
  const confidence = greatest === 100 || inPercent ? 0.95 : greatest > 64 ? 0.85 : 0.6;
  return {
    scale: end,
    isOpen: confidence < sure,
    confidence,
    reason: `Letters name the sides, and the greatest number beside one is ${greatest}.`,
    others: ends.filter((other) => other !== end),
  };
}

/** A position −100 (left) to 100 (right), with at most two decimals, as far as it lies within its scale or beyond. */
export function panOf(position: number, [left, centre, right]: PanScale): number {
  const side = position < centre ? centre - left : right - centre;
  return Math.round(((position - centre) / side) * 10_000) / 100;
}
