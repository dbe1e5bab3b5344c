import { isLengthWord } from '../../../trade/headings/headingStems';
import { readHeading, unitInHeading } from '../../../trade/headings/headings';
import { wordsOf } from '../../../trade/languages/spelling';
import type { ColumnState } from '../columnState';
import { agrees } from '../likeness';

/** Keys, velocities and levels are lower (our choice). */
const leastFrames = 1000;

/**
 * A heading that says nothing but `loop` over positions, and right behind it one that says nothing but a length: where the loops start
 * and how long they are. A file cannot be shorter than where its loop starts, so a lower length is that of the loop.
 */
export function settleLoopAndLength(state: ColumnState): void {
  const { columns, taken, chosen, contents } = state;
  if (taken.has('loop') || taken.has('loop_start') || taken.has('loop_end') || taken.has('loop_length'))
    return;
  const pairs = columns.slice(0, -1).filter(({ index, heading, meaning }) => {
    const behind = columns[index + 1];
    return (
      meaning === 'unknown' &&
      (behind?.meaning === 'unknown' || behind?.meaning === 'length') &&
      !chosen.has(index) &&
      !chosen.has(index + 1) &&
      readHeading(heading)?.meaning === 'loop' &&
      isLengthAlone(behind.heading)
    );
  });
  const [loop] = pairs;
  if (!loop || pairs.length > 1) return;
  const start = loop.index;
  const length = start + 1;
  if (!agrees(state, start, 'loop_start') || !agrees(state, length, 'loop_length')) return;
  const [starts, lengths] = [contents[start], contents[length]];
  const isTime = unitInHeading(loop.heading) !== undefined || starts.units.size > 0;
  const areFrames = (starts.greatest >= leastFrames && starts.fractional === 0) || areGrouped(state, start);
  if (starts.negative > 0 || (!isTime && !areFrames)) return;
  if (!starts.values.some((from, row) => from >= lengths.values[row])) return;
  for (const [index, meaning] of [
    [start, 'loop_start'],
    [length, 'loop_length'],
  ] as const) {
    columns[index].evidence.length = 0;
    columns[index].repeats = undefined;
    columns[index].unit = unitInHeading(columns[index].heading);
    const evidence =
      'Some lengths are lower than the positions under the loop, so they are those of the loops.';
    state.claim(index, meaning, 0.7, evidence);
  }
}

/** Whether all numbers of a column have a sign between thousands, as `12,500`. */
function areGrouped({ cells, looked }: ColumnState, index: number): boolean {
  const texts = looked.map((row) => cells.plain(cells.cell(row, index)).trim()).filter((text) => text !== '');
  return texts.every((text) => /^[1-9]\d{0,2}(?:[.,'\u2019\s]\d{3})+$/u.test(text));
}

/** Whether a heading says a length, and not of what. */
function isLengthAlone(heading: string): boolean {
  const words = wordsOf(heading.replace(/[([{（].*$/u, ''));
  return words.length === 1 && isLengthWord(words[0] ?? '');
}
