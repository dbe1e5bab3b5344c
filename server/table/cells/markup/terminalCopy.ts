/** So much of a text is looked at, and so many lines before and behind the numbered ones. */
const looked = 1 << 16;
const mostAround = 2;
const fewest = 3;
/** What numbers a line: a number that stands to the right before a tab, or one before a colon. */
const numbered = /^(?:[ ]+(\d{1,7})\t|(\d{1,7}):[ \t]?)/;
/** The sign that a terminal waits with, and what was typed behind it. */
const prompt = /^[^\s|;,]{0,80}[$%>](?:[ \t][^|;,]{0,120})?$|^[A-Za-z]:\\[^|;,>]{0,80}>[^|;,]{0,120}$/;
const numberBefore = /^(?:[ ]+\d{1,7}\t|\d{1,7}:)/gm;

/**
 * A text copied from a terminal without the numbers before its lines, which count from 1, and without the lines that were typed. What is
 * taken away becomes blanks, so that all offsets stay.
 */
export function withoutLineNumbers(text: string): string {
  const lines = text.slice(0, looked).split(/\r?\n/);
  if (text.length > looked) lines.pop();
  const numbers = lines.map((line) => {
    const [, before, colon] = numbered.exec(line) ?? [];
    return Number(before ?? colon ?? Number.NaN);
  });
  const first = numbers.findIndex((number) => !Number.isNaN(number));
  const last = numbers.findLastIndex((number) => !Number.isNaN(number));
  if (first < 0 || last - first + 1 < fewest || numbers[first] !== 1) return text;
  const outside = [...lines.slice(0, first), ...lines.slice(last + 1)].filter((line) => line.trim() !== '');
  if (outside.length > 2 * mostAround || !outside.every((line) => prompt.test(line.trim()))) return text;
  const isCounted = numbers.slice(first, last + 1).every((number, at) => number === at + 1);
  return isCounted ? text.replace(numberBefore, blanks) : text;
}

function blanks(text: string): string {
  return ' '.repeat(text.length);
}
