const sentences = /(?<=[.!?;])\s+|[\n\r]+/u;

/** The sentence of a text that says something by itself; the whole text where none of its sentences does. */
export function tellingSentence(text: string, says: (sentence: string) => boolean): string {
  const parts = text.split(sentences);
  const found = parts.length > 1 ? parts.find(says) : undefined;
  return (found ?? text).trim();
}
