/** `1 gap`, `3 gaps`, `10,000 gaps`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  const digits = String(count).replace(/\B(?=(\d{3})+$)/g, ',');
  return `${digits} ${byCount(count, one, many)}`;
}

/** The word that goes with a count: `is` with 1, `are` with any other. */
export function byCount(count: number, one: string, many: string): string {
  return count === 1 ? one : many;
}
