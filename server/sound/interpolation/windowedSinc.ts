/** Phases between two frames that tables of taps are made for where what lies between two phases is blended linearly. */
export const phases = 512;

/** The same where the nearest phase is taken: four times as many err by less than eight taps do (see the tests). */
export const nearestPhases = 2048;

/** The modified Bessel function of the first kind of order 0, by its power series (Abramowitz and Stegun, 9.6.12). */
function besselI0(x: number): number {
  let sum = 1;
  let term = 1;
  for (let n = 1; term > sum * 1e-17; n++) {
    term *= (x / (2 * n)) ** 2;
    sum += term;
  }
  return sum;
}

/** The Kaiser window at −1..1, 1 in the middle (Kaiser and Schafer, IEEE Trans. ASSP 28(1), 1980); 0 outside. */
export function kaiser(at: number, beta: number): number {
  return Math.abs(at) >= 1 ? 0 : besselI0(beta * Math.sqrt(1 - at * at)) / besselI0(beta);
}

/** A window at −1..1 by its β. */
export type Window = (at: number, beta: number) => number;

const windowSteps = 8192;

/** {@link kaiser} for one β, looked up: within 10⁻⁷, which is far less than what taps by the nearest phase err. */
export function lookedUpKaiser(beta: number): Window {
  const values = Float64Array.from({ length: windowSteps + 2 }, (_, at) => kaiser(at / windowSteps, beta));
  return (at) => {
    const place = Math.abs(at) * windowSteps;
    if (place >= windowSteps) return 0;
    const whole = Math.floor(place);
    return values[whole] + (place - whole) * (values[whole + 1] - values[whole]);
  };
}

/** sin(πx) / πx, exactly 0 at whole numbers. */
export function sinc(x: number): number {
  if (x === 0) return 1;
  if (Number.isInteger(x)) return 0;
  return Math.sin(Math.PI * x) / (Math.PI * x);
}

/** The taps of a windowed sinc for each phase, one row behind the other. */
export interface RowTable {
  /** Taps of a row; the first stands `taps / 2 − 1` frames before the whole part of the position. */
  readonly taps: number;
  /** One row more than there are phases; each sums to 1. */
  readonly rows: Float32Array;
}

/**
 * Makes a table of rows. `cutoff` is the share of the frequencies of the input that passes, 1 for all: then phase 0 is the
 * frame itself and nothing else.
 */
export function filterRows(
  taps: number,
  beta: number,
  cutoff: number,
  phaseCount = phases,
  window: Window = kaiser,
): RowTable {
  const rows = new Float32Array((phaseCount + 1) * taps);
  const half = taps / 2;
  const row = new Float64Array(taps);
  // A row is that of the rest of the way to the next frame, from behind.
  for (let phase = 0; phase <= phaseCount / 2; phase++) {
    let sum = 0;
    for (let tap = 0; tap < taps; tap++) {
      const distance = tap - (half - 1) - phase / phaseCount;
      row[tap] = sinc(cutoff * distance) * window(distance / half, beta);
      sum += row[tap];
    }
    for (let tap = 0; tap < taps; tap++) {
      rows[phase * taps + tap] = row[tap] / sum;
      rows[(phaseCount - phase + 1) * taps - 1 - tap] = row[tap] / sum;
    }
  }
  return { taps, rows };
}

/** One side of a windowed sinc, {@link phases} values a zero crossing, the last one 0. */
export interface SideTable {
  /** Zero crossings of the sinc at full bandwidth, up to the end of the window. */
  readonly lobes: number;
  readonly values: Float64Array;
}

/** Makes one side of a windowed sinc that is stretched over more frames where the input is played faster. */
export function sideTable(lobes: number, beta: number, cutoff: number): SideTable {
  // One more 0, so that the last phase can be blended as the others are.
  const values = new Float64Array(lobes * phases + 2);
  for (let at = 0; at < lobes * phases; at++) {
    const distance = at / phases;
    values[at] = sinc(cutoff * distance) * kaiser(distance / lobes, beta);
  }
  return { lobes, values };
}

/**
 * The share of the frequencies of the input that may pass where it is played faster by `ratio`, so that little folds
 * back: none is given up at ratio 1, a tenth from ratio 1.11 on. Continuous, so that a glide through 1 does not jump.
 */
export function cutoffFor(ratio: number): number {
  return ratio <= 1 ? 1 : Math.max(0.9 / ratio, 1 / ratio ** 2);
}
