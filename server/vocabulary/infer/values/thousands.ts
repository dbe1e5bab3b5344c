/** A mark between groups of three digits. */
export type ThousandsMark = ',' | '.' | ' ' | "'";

const marked = /^\d{1,3}(?:([.,' \u00a0\u202f\u2009\u2019])\d{3})(?:\1\d{3})*$/;

/**
 * What stands between thousands: blanks and raised commas say so by themselves; points and commas where a number has two of
 * them, or where all with one have three digits behind it and others have none and are small.
 */
export function thousandsIn(texts: readonly (string | undefined)[]): ThousandsMark | undefined {
  let mark: string | undefined;
  let isSure = false;
  let small = 0;
  for (const raw of texts) {
    const text = raw?.trim();
    if (text === undefined) continue;
    const found = marked.exec(text)?.[1];
    if (found === undefined) {
      if (!/^\d{1,3}$/.test(text)) return undefined;
      if (text !== '0') small++;
      continue;
    }
    if ((mark !== undefined && mark !== found) || /^0./.test(text)) return undefined;
    mark = found;
    if (!/[.,]/.test(found) || text.split(found).length > 2) isSure = true;
  }
  if (mark === undefined || !(isSure || small > 0)) return undefined;
  return mark === ',' || mark === '.' ? mark : /['\u2019]/.test(mark) ? "'" : ' ';
}

/** Whether all numbers of a place can be read with a mark between thousands. */
export function fitsMark(texts: readonly (string | undefined)[], mark: ThousandsMark): boolean {
  return texts.every((text) => {
    if (text === undefined || /^\d{1,3}$/.test(text.trim())) return true;
    const found = marked.exec(text.trim())?.[1];
    return found !== undefined && !/^0./.test(text.trim()) && (mark === found || !/[.,]/.test(mark + found));
  });
}

/** Whether a number has the mark twice, or one that no decimals stand behind. */
export function surelyMarked(texts: readonly (string | undefined)[], mark: ThousandsMark): boolean {
  if (mark !== ',' && mark !== '.') return true;
  return texts.some((text) => text !== undefined && text.split(mark).length > 2);
}

const decimals = /^[-+−]?(?:0([.,])\d+|\d+([.,])(?:\d{1,2}|\d{4,}))(?:\s*[^\d\s.,][^\d]*)?$/u;

/** Whether a number has the mark before decimals: before other than three digits, or behind a 0 alone. */
export function hasDecimalsBehind(texts: readonly (string | undefined)[], mark: ThousandsMark): boolean {
  return texts.some((text) => {
    const found = text === undefined ? null : decimals.exec(text.trim());
    return found !== null && (found[1] ?? found[2]) === mark;
  });
}

/** A number without marks between thousands. */
export function withoutMarks(text: string): string {
  return text.replace(/[.,'\s\u2019]/g, '');
}
