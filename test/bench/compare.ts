/** What comparing two pieces of work gave. Times in milliseconds. */
export interface Comparison {
  /** Median of the first one's time over the second one's, pair by pair. */
  ratio: number;
  firstMs: number;
  secondMs: number;
}

/** The value that half of the values lie below; for other shares, that share of them (0..1). */
export function quantile(values: readonly number[], share = 0.5): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = (sorted.length - 1) * share;
  const low = sorted[Math.floor(at)];
  const high = sorted[Math.ceil(at)];
  return low + (high - low) * (at - Math.floor(at));
}

/** Milliseconds that a piece of work takes. */
export async function timeOf(work: () => unknown): Promise<number> {
  const start = performance.now();
  const result = work();
  if (result instanceof Promise) await result;
  return performance.now() - start;
}

/**
 * Times two pieces of work pair by pair, in turns which goes first, after rounds that warm both up. A pair is timed
 * close together, so that what slows the machine down for a while slows both.
 */
export async function compare(
  first: () => unknown,
  second: () => unknown,
  { warmUp = 12, pairs = 41 } = {},
): Promise<Comparison> {
  const firsts: number[] = [];
  const seconds: number[] = [];
  for (let round = -warmUp; round < pairs; round++) {
    let a: number;
    let b: number;
    if (round % 2 === 0) {
      a = await timeOf(first);
      b = await timeOf(second);
    } else {
      b = await timeOf(second);
      a = await timeOf(first);
    }
    if (round >= 0) {
      firsts.push(a);
      seconds.push(b);
    }
  }
  const ratios = firsts.map((time, pair) => time / seconds[pair]);
  return { ratio: quantile(ratios), firstMs: quantile(firsts), secondMs: quantile(seconds) };
}

/** Times one piece of work again and again after rounds that warm it up; milliseconds each. */
export async function times(work: () => unknown, { warmUp = 5, rounds = 41 } = {}): Promise<number[]> {
  for (let round = 0; round < warmUp; round++) await timeOf(work);
  const all: number[] = [];
  for (let round = 0; round < rounds; round++) all.push(await timeOf(work));
  return all;
}
