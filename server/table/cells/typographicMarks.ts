/** The marks that may close a quotation, by the one that opens it: “x”, „x“, «x», »x«, ‚x‘, 「x」. */
const closing: ReadonlyMap<string, string> = new Map([
  ['\u201c', '\u201d'],
  ['\u201d', '\u201d'],
  ['\u201e', '\u201c\u201d'],
  ['\u201f', '\u201d'],
  ['\u2018', '\u2019'],
  ['\u2019', '\u2019'],
  ['\u201a', '\u2018\u2019'],
  ['\u201b', '\u2019'],
  ['\u00ab', '\u00bb'],
  ['\u00bb', '\u00ab\u00bb'],
  ['\u2039', '\u203a'],
  ['\u203a', '\u2039\u203a'],
  ['\u300c', '\u300d'],
  ['\u300e', '\u300f'],
  ['\u301d', '\u301e\u301f'],
  ['\uff02', '\uff02'],
]);

/** Whether typographic quotation marks stand around a whole stretch of a text, and none of the same within it. */
export function areQuoted(text: string, start: number, end: number): boolean {
  const open = text.charAt(start);
  const ends = closing.get(open);
  const close = text.charAt(end - 1);
  if (!ends?.includes(close)) return false;
  const within = text.slice(start + 1, end - 1);
  const isSingle = close === '\u2019';
  return !within.includes(open) && (isSingle || !within.includes(close));
}
