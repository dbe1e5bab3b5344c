/** More decimals than a double distinguishes between numbers of everyday size. */
const mostDecimals = 18;
/** Up to here whole numbers are exact in a double. */
const mostExact = 2 ** 53;

/**
 * The shortest plain decimal text near a number that is accepted: the one with the fewest decimals nearest to it. What is
 * accepted has to lie around the number. `undefined` where nothing is.
 */
export function shortestDecimal(near: number, accepts: (written: number) => boolean): string | undefined {
  if (!(Math.abs(near) < 1e15)) return undefined;
  for (let decimals = 0; decimals <= mostDecimals; decimals++) {
    const scale = 10 ** decimals;
    const scaled = near * scale;
    if (Math.abs(scaled) >= mostExact) {
      const text = near.toFixed(decimals);
      if (accepts(Number(text))) return withoutMinusZero(text);
      continue;
    }
    const nearest = Math.round(scaled);
    if (accepts(nearest / scale)) return withoutMinusZero((nearest / scale).toFixed(decimals));
    // Half way between two, either is the nearest.
    if (Math.abs(Math.abs(scaled - nearest) - 0.5) > 1e-6) continue;
    const other = scaled > nearest ? nearest + 1 : nearest - 1;
    if (accepts(other / scale)) return withoutMinusZero((other / scale).toFixed(decimals));
  }
  return undefined;
}

function withoutMinusZero(text: string): string {
  return /^-[0.]*$/.test(text) ? text.slice(1) : text;
}
