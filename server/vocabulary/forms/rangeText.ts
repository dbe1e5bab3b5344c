/** The two parts of a range in a text; the same place twice where it holds one value alone. */
export interface RangeParts {
  first: { start: number; end: number };
  second: { start: number; end: number };
}

/** What can part the two ends of a range; a dash only where it is no sign. */
const separators = /\s*(?:\.{2,3}|…|[–—:;,/|]|\bto\b|-)\s*|\s+/g;
/** Longer texts are no ranges. */
const longest = 100;

/**
 * Takes a range such as `36-48` or `C-1 .. C3` apart. `between` is what usually parts it; where that does not lead to two parts
 * that are accepted, other usual separators are tried. `undefined` where the text makes no range.
 */
export function splitRange(
  text: string,
  between: string,
  accepts: (part: string, which: 1 | 2) => boolean,
): RangeParts | undefined {
  if (text.length > longest) return undefined;
  const usual = between.trim();
  if (usual !== '') {
    for (let at = text.indexOf(usual, 1); at > 0; at = text.indexOf(usual, at + 1)) {
      const parts = partsAround(text, at, at + usual.length);
      if (isAccepted(text, parts, accepts)) return parts;
    }
  }
  for (const found of text.matchAll(separators)) {
    const parts = partsAround(text, found.index, found.index + found[0].length);
    if (isAccepted(text, parts, accepts)) return parts;
  }
  const whole = trimmed(text, 0, text.length);
  const one = { first: whole, second: whole };
  return isAccepted(text, one, accepts) ? one : undefined;
}

function partsAround(text: string, start: number, end: number): RangeParts {
  return { first: trimmed(text, 0, start), second: trimmed(text, end, text.length) };
}

function isAccepted(
  text: string,
  { first, second }: RangeParts,
  accepts: (part: string, which: 1 | 2) => boolean,
): boolean {
  if (first.start >= first.end || second.start >= second.end) return false;
  return accepts(text.slice(first.start, first.end), 1) && accepts(text.slice(second.start, second.end), 2);
}

function trimmed(text: string, from: number, to: number): { start: number; end: number } {
  let start = from;
  let end = to;
  while (start < end && text[start]?.trim() === '') start++;
  while (end > start && text[end - 1]?.trim() === '') end--;
  return { start, end };
}
