/** The numbers that stand in one place again and again, as far as it matters for the scale that they count in. */
export interface Numbers {
  /** NaN where there is none. */
  numbers: ArrayLike<number>;
  /** How many there are, how many of them are whole, and how many are below 0. */
  numeric: number;
  whole: number;
  negative: number;
  /** Infinite where there is no number. */
  least: number;
  greatest: number;
  /** The most digits behind a decimal point. */
  decimals: number;
}

/** A scale with how sure it is, why, and what else it could be. */
export interface ScaleReading<Scale> {
  scale: Scale;
  /** Whether the numbers alone do not settle it, so that a person has to be told. */
  isOpen: boolean;
  /** 0..1 */
  confidence: number;
  /** A sentence for people. */
  reason: string;
  others: readonly Scale[];
}

/** Takes together some numbers; those that are NaN do not count. */
export function numbersOf(numbers: ArrayLike<number>): Numbers {
  const found: Numbers = {
    numbers,
    numeric: 0,
    whole: 0,
    negative: 0,
    least: Number.POSITIVE_INFINITY,
    greatest: Number.NEGATIVE_INFINITY,
    decimals: 0,
  };
  for (let at = 0; at < numbers.length; at++) {
    const number = numbers[at];
    if (Number.isNaN(number)) continue;
    found.numeric++;
    if (number < 0) found.negative++;
    if (Number.isInteger(number) || !Number.isFinite(number)) found.whole++;
    else found.decimals = Math.max(found.decimals, decimalsOf(number));
    if (number < found.least && Number.isFinite(number)) found.least = number;
    if (number > found.greatest && Number.isFinite(number)) found.greatest = number;
  }
  return found;
}

/** A number this many times as great as the next one is a slip, where others agree (our choice). */
const farOff = 20;

/**
 * The numbers without the one that is far greater than all others, so that no cell alone decides how a column counts; the same
 * where there is none, or too few others to tell.
 */
export function withoutOutlier(all: Numbers): Numbers {
  let [first, second, at] = [0, 0, -1];
  let others = 0;
  for (let place = 0; place < all.numbers.length; place++) {
    const size = Math.abs(all.numbers[place]);
    if (Number.isNaN(size) || size === Number.POSITIVE_INFINITY) continue;
    if (size !== 0) others++;
    if (size > first) [first, second, at] = [size, first, place];
    else second = Math.max(second, size);
  }
  if (others < 4 || second === 0 || first < second * farOff) return all;
  return numbersOf(Array.from(all.numbers).filter((_, place) => place !== at));
}

/** Whether all numbers are whole multiples of another one. */
export function areMultiplesOf({ numbers }: Numbers, step: number): boolean {
  for (let at = 0; at < numbers.length; at++)
    if (!Number.isNaN(numbers[at]) && numbers[at] % step !== 0) return false;
  return true;
}

/** Whether a number is among others. */
export function holdsNumber({ numbers }: Numbers, number: number): boolean {
  for (let at = 0; at < numbers.length; at++) if (numbers[at] === number) return true;
  return false;
}

/** How many different numbers there are, at most `most`. */
export function different({ numbers }: Numbers, most: number): number {
  const seen = new Set<number>();
  for (let at = 0; at < numbers.length && seen.size < most; at++)
    if (!Number.isNaN(numbers[at])) seen.add(numbers[at]);
  return seen.size;
}

function decimalsOf(number: number): number {
  const text = String(number);
  const point = text.indexOf('.');
  return point < 0 ? 0 : text.length - point - 1;
}
