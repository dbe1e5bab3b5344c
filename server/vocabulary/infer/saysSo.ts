/** A sentence that quotes what a document says. */
export function saysSo(text: string): string {
  return `The text says "${text.slice(0, 120)}".`;
}
