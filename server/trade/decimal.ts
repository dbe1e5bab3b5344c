/** A number is written with so many decimals. */
export const mostDecimals = 6;

/** A number as it is written: with at most six decimals. */
export function rounded(number: number): number {
  if (Number.isInteger(number)) return number === 0 ? 0 : number;
  const near = Math.round(number * 1e6) / 1e6;
  return near === 0 ? 0 : near;
}

/** A number as a value is written: plain decimal notation with at most six decimals. */
export function decimal(number: number): string {
  return String(rounded(number));
}
