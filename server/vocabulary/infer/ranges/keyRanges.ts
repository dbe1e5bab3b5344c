import { rangesOf } from './rangeText';
import { rowKeyNumber } from './rowKeys';

/** The two ends in a column of keys, where at least one of its texts is a range and all others are single keys. */
export function keyRangesOf(texts: readonly (string | undefined)[]): ReturnType<typeof rangesOf> {
  const most = rangesOf(texts);
  if (most) return most;
  const ranged = texts.filter((text) => text !== undefined && rowKeyNumber(text) === undefined);
  const ranges = ranged.length === 0 ? undefined : rangesOf(ranged);
  if (!ranges) return undefined;
  const ends = ranged.map((_, at) => [ranges.first[at], ranges.second[at]]);
  if (ends.some((both) => both.some((end) => rowKeyNumber(end) === undefined))) return undefined;
  const side = (at: 0 | 1) => {
    let next = 0;
    return texts.map((text) =>
      text === undefined || rowKeyNumber(text) !== undefined ? text : ends[next++]?.[at],
    );
  };
  return { first: side(0), second: side(1), between: ranges.between };
}
