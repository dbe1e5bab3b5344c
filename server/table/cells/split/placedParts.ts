import type { Stretch } from '../../../model/text/stretch';
import { readHeading } from '../../../trade/headings/headings';
import type { Line } from './lineRuns';
import { partsByRuns } from './lineRuns';

/** Headings of so many words and characters are taken apart. */
const mostWords = 6;
const longestHeading = 60;

/**
 * The parts of a line that keeps to no columns, an empty one before those that none stands over: each goes to the column that most of it
 * stands over, else to the one that it starts in. `undefined` where two go to the same.
 */
export function placedParts(text: string, line: Line, columns: readonly Stretch[]): Line[] | undefined {
  const parts: Line[] = [];
  const places: number[] = [];
  for (const part of partsByRuns(text, line).flatMap((one) => endsOver(text, line, one, columns))) {
    const place = placeOf(line, part, columns);
    const before = places.at(-1) ?? -1;
    // What stands in brackets belongs to the word before.
    if (place === before && /[([]/.test(text[part.start] ?? ''))
      parts.push({ ...(parts.pop() ?? part), end: part.end });
    else if (place <= before) return undefined;
    else {
      for (let column = before + 1; column < place; column++)
        parts.push({ start: part.start, end: part.start });
      parts.push(part);
      places.push(place);
    }
  }
  return parts;
}

/** The first column that a part stands over, of a word alone the one that most of it does; else the one that it starts in. */
function placeOf(line: Line, part: Line, columns: readonly Stretch[]): number {
  const over = columns.findIndex((column) => sharedWith(line, part, column) > 0);
  if (over >= 0) return over;
  const next = columns.findIndex((column) => column.start > part.start - line.start);
  return next < 0 ? columns.length - 1 : Math.max(0, next - 1);
}

/** How many characters of a part stand over a column. */
function sharedWith(line: Line, part: Line, column: Stretch): number {
  return Math.min(column.end, part.end - line.start) - Math.max(column.start, part.start - line.start);
}

/** The words of a part of a line, where each is over another column and a heading only alone: `from to`; else the part as it is. */
function endsOver(text: string, line: Line, part: Line, columns: readonly Stretch[]): Line[] {
  if (part.end - part.start > longestHeading) return [part];
  const words = Array.from(text.slice(part.start, part.end).matchAll(/\S+/g), ({ 0: word, index }) => ({
    start: part.start + index,
    end: part.start + index + word.length,
  }));
  if (words.length < 2 || words.length > mostWords) return [part];
  const isHeading = (one: Line) => readHeading(text.slice(one.start, one.end)) !== undefined;
  if (isHeading(part) || !words.every(isHeading)) return [part];
  const places = words.map((word) => {
    const shared = columns.map((column) => sharedWith(line, word, column));
    const most = Math.max(...shared);
    return most > 0 ? shared.indexOf(most) : -1;
  });
  return places.every((place, at) => place > (places[at - 1] ?? -1)) ? words : [part];
}
