/**
 * The same text as a string of its own. A stretch cut out of a text keeps the whole of it in memory, so what is
 * remembered longer than the text is copied.
 */
export function ownText(stretch: string): string {
  // Joining makes a new string, which the answer then is a stretch of.
  return ` ${stretch}`.slice(1);
}
