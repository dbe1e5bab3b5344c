/** What is looked at of a line, in characters. */
export const longestLine = 4096;
const word = /[^ \t\u00a0\r\n]+/g;

/** A stretch of a line. */
export interface Word {
  start: number;
  end: number;
}

/** Whether a line holds neither letters nor digits. */
export function isBlankLine(text: string, { start, end }: Word): boolean {
  return !/[\p{L}\p{N}]/u.test(text.slice(start, Math.min(end, start + longestLine)));
}

/** The words of a line, parted by blanks. */
export function wordsIn(text: string, start: number, end: number): Word[] {
  return Array.from(text.slice(start, end).matchAll(word), ({ index, 0: one }) => ({
    start: start + index,
    end: start + index + one.length,
  }));
}
