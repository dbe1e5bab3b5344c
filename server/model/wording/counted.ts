/** `1 gap`, `3 gaps`, `10,000 gaps`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  const digits = String(count).replace(/\B(?=(\d{3})+$)/g, ',');
  return `${digits} ${count === 1 ? one : many}`;
}
