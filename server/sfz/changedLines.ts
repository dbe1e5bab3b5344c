/** Lines that differ between two texts: what stands before and behind them is the same in both. */
export interface ChangedLines {
  /** Where they start in both texts. */
  start: number;
  /** Where they end in the old and in the new text, behind their last line end. */
  oldEnd: number;
  newEnd: number;
}

const lineFeed = 10;
const carriageReturn = 13;

/** The smallest run of whole lines outside of which two texts are the same. */
export function changedLines(before: string, after: string): ChangedLines {
  let start = sameStart(before, after);
  // A line end of two characters can have lost or gained its second.
  while (start > 0 && !(endsLine(before, start - 1) && endsLine(after, start - 1))) start--;
  const most = Math.min(before.length, after.length) - start;
  let end = sameEnd(before, after, most);
  while (end > 0 && !startsLine(before, after, end)) end--;
  return { start, oldEnd: before.length - end, newEnd: after.length - end };
}

function startsLine(before: string, after: string, end: number): boolean {
  return endsLine(before, before.length - end - 1) && endsLine(after, after.length - end - 1);
}

/** Whether a line ends with the character at an offset. */
function endsLine(text: string, at: number): boolean {
  const code = text.charCodeAt(at);
  return code === lineFeed || (code === carriageReturn && text.charCodeAt(at + 1) !== lineFeed);
}

// Comparing halves of what is left lets the engine compare whole blocks of memory.

function sameStart(before: string, after: string): number {
  let same = 0;
  // Stryker disable next-line MethodExpression: no more is the same than the shorter text is long
  let differs = Math.min(before.length, after.length) + 1;
  while (differs - same > 1) {
    const middle = (same + differs) >> 1;
    if (before.slice(same, middle) === after.slice(same, middle)) same = middle;
    else differs = middle;
  }
  return same;
}

function sameEnd(before: string, after: string, most: number): number {
  let same = 0;
  let differs = most + 1;
  while (differs - same > 1) {
    const middle = (same + differs) >> 1;
    const [a, b] = [before.length, after.length];
    if (before.slice(a - middle, a - same) === after.slice(b - middle, b - same)) same = middle;
    else differs = middle;
  }
  return same;
}
