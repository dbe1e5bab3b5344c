import { filterFrames } from './samplePieces';

/** The shape of the window: side lobes about 100 dB down (Kaiser and Schafer, 1980). */
const beta = 10;
/** Where the pass band ends, as a part of the half of the new rate. */
const passBand = 0.92;

/**
 * Keeps one of `step` frames behind a low pass with a Kaiser window, so that nothing above half of the new rate folds down.
 * The frames kept are the first and each `step`th behind it; the filter delays nothing.
 */
export async function* fewerFrames(
  blocks: AsyncIterable<Float32Array>,
  step: number,
): AsyncGenerator<Float32Array> {
  if (step === 1) {
    yield* blocks;
    return;
  }
  const taps = lowPass(step);
  const half = (taps.length - 1) / 2;
  let held = new Float32Array(half);
  let next = half;
  const take = (more: Float32Array): Float32Array => {
    const joined = new Float32Array(held.length + more.length);
    joined.set(held);
    joined.set(more, held.length);
    const count = Math.max(0, Math.ceil((joined.length - half - next) / step));
    const kept = new Float32Array(count);
    for (let at = 0; at < count; at++, next += step) {
      let sum = 0;
      for (let tap = 0; tap < taps.length; tap++)
        sum += (taps[tap] as number) * (joined[next - half + tap] as number);
      kept[at] = sum;
    }
    const drop = Math.min(joined.length, Math.max(0, next - half));
    held = joined.slice(drop);
    next -= drop;
    return kept;
  };
  for await (const block of blocks) yield take(block);
  yield take(new Float32Array(half));
}

function lowPass(step: number): Float64Array {
  const half = filterFrames * step;
  const taps = new Float64Array(2 * half + 1);
  const cutoff = passBand / step;
  let sum = 0;
  for (let at = -half; at <= half; at++) {
    const x = Math.PI * cutoff * at;
    const value =
      (at === 0 ? 1 : Math.sin(x) / x) * (bessel(beta * Math.sqrt(1 - (at / half) ** 2)) / bessel(beta));
    taps[at + half] = value;
    sum += value;
  }
  return taps.map((value) => value / sum);
}

/** The modified Bessel function of order 0 (Abramowitz and Stegun, 9.6.12). */
function bessel(x: number): number {
  let sum = 1;
  let term = 1;
  for (let k = 1; term > sum * 1e-17; k++) {
    term *= (x / (2 * k)) ** 2;
    sum += term;
  }
  return sum;
}
