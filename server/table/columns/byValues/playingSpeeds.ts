import { isSpeedHeading } from '../../../trade/headings/speedHeadings';
import { shareOf } from '../columnContents';
import type { ColumnState } from '../columnState';

/** Nobody plays a sample more than two octaves off by its speed (our choice). */
const [slowest, fastest] = [0.25, 4];

/** How fast samples play, as numbers around 1, is their tuning: `playback speed 1.0029` is 5 cents up. */
export function findPlayingSpeeds(state: ColumnState): void {
  const { taken, columns, contents, chosen } = state;
  if (taken.has('tune') || taken.has('deviation')) return;
  const found = columns.filter(({ index, meaning, heading }) => {
    if (meaning !== 'unknown' || chosen.has(index)) return false;
    const { least, greatest, fractional } = contents[index];
    const areFactors =
      shareOf(contents[index], 'number') >= 0.9 && fractional > 0 && least >= slowest && greatest <= fastest;
    // Shares of something reach from 0 to 1.
    return areFactors && greatest >= 1 && isSpeedHeading(heading);
  });
  const [only, ...others] = found;
  if (only === undefined || others.length > 0) return;
  only.evidence.length = 0;
  only.repeats = undefined;
  only.unit = 'linear';
  const evidence =
    'Its numbers lie around 1 and say how many times as fast samples play: 1.01 is read as 17.23 cents up.';
  state.claim(only.index, 'tune', 0.8, evidence);
}
