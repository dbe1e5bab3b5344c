/** A flat list of numbers with an entry a region. */
export type NumberColumn = Float64Array | Int32Array | Int16Array | Uint16Array | Uint8Array;

/** Fills a column with the value of each region; many times as quick as making it `from` another list. */
export function filled<T extends NumberColumn>(column: T, valueAt: (region: number) => number): T {
  for (let region = 0; region < column.length; region++) column[region] = valueAt(region);
  return column;
}
