/** Several things for a message: `a`, `a or b`, `a, b or c`. */
export function listText(words: readonly string[], last: 'and' | 'or'): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}
