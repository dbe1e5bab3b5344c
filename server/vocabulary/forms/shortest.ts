/** More decimals than a double distinguishes between numbers of everyday size. */
const mostDecimals = 18;

/**
 * The shortest plain decimal text near a number that is accepted: the one with the fewest decimals, and of these the nearest.
 * `undefined` where none is.
 */
export function shortestDecimal(near: number, accepts: (written: number) => boolean): string | undefined {
  if (!(Math.abs(near) < 1e15)) return undefined;
  for (let decimals = 0; decimals <= mostDecimals; decimals++) {
    const nearest = near.toFixed(decimals);
    const step = 10 ** -decimals;
    const number = Number(nearest);
    const towards = near >= number ? 1 : -1;
    for (const steps of [0, towards, -towards]) {
      const text = steps === 0 ? nearest : (number + steps * step).toFixed(decimals);
      if (accepts(Number(text))) return withoutMinusZero(text);
    }
  }
  return undefined;
}

function withoutMinusZero(text: string): string {
  return /^-[0.]*$/.test(text) ? text.slice(1) : text;
}
