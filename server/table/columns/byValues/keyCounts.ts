import { shareOf } from '../columnContents';
import type { ColumnState } from '../columnState';

/** In so many rows numbers count the keys between both ends (our choice). */
const holds = 0.8;

/**
 * Beside low and high keys, numbers under a heading such as `Keys` that are as many as there are keys from one to the other count them.
 * Those that lie outside of nearly all ranges are no keys either: it stays open what they are.
 */
export function settleKeyCounts(state: ColumnState): void {
  const { contents, taken, chosen, columns } = state;
  const [low, high] = [state.contentsOf('lokey'), state.contentsOf('hikey')];
  if (!low || !high || low.named !== high.named) return;
  // Of notes it is not known yet in which octave middle C is.
  const doubt = low.named ? 12 : 0;
  for (const meaning of ['key_range', 'key'] as const) {
    const index = taken.get(meaning);
    if (index === undefined || chosen.has(index)) continue;
    const own = contents[index];
    if (own.named || shareOf(own, 'number') < 1 || own.fractional > 0) continue;
    let [rows, inclusive, between, outside] = [0, 0, 0, 0];
    for (const [row, value] of own.values.entries()) {
      const [from, to] = [low.values[row], high.values[row]];
      if (!Number.isFinite(value + from + to)) continue;
      rows++;
      if (value === to - from + 1) inclusive++;
      if (value === to - from) between++;
      if (value < from - doubt || value > to + doubt) outside++;
    }
    if (rows === 0 || (rows === 1 && outside === 0)) continue;
    if (
      Math.max(inclusive, between) >= rows * holds &&
      !low.values.every((from, row) => from === own.values[row])
    )
      state.claim(
        index,
        'key_count',
        0.9,
        'Its numbers are how many keys there are from the low to the high one.',
      );
    else if (rows > 1 && outside >= rows * holds) {
      taken.delete(meaning);
      columns[index].meaning = 'unknown';
      columns[index].evidence.push(
        'Its numbers lie outside of the low and high keys, so they are no keys of the zones.',
      );
    }
  }
}
