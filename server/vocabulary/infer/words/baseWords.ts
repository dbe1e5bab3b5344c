/** Words for the key that others are counted from, in names of places (from memory). */
const words: ReadonlySet<string> = new Set(
  'base basis basic first lowest start zero origin bottom home reference grund primera premiere prima eerste'.split(
    ' ',
  ),
);

/** Whether the name of a place speaks of a beginning or a base. */
export function isBaseName(name: readonly string[]): boolean {
  return name.some((word) => words.has(word));
}
