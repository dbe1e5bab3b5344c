import type { ColumnMeaning } from '../../trade/meaning';
import type { ColumnContents } from './columnContents';
import { shareOf } from './columnContents';
import type { ColumnState } from './columnState';
import { isKeys } from './columnState';
import { runsFromOne } from './headingFit';
import { orderShare } from './keyOrder';

/** Nearly all cells have to agree where a heading is only like a known one. */
const nearlyAll = 0.9;
const mostTurns = 64;

/**
 * Whether the cells of a column by themselves agree with a meaning that its heading is only like: `Rot` is neither a root nor a
 * round robin where its numbers are angles.
 */
export function agrees(state: ColumnState, index: number, meaning: ColumnMeaning): boolean {
  const contents = state.contents[index];
  if (contents.filled === 0) return true;
  const numbers = shareOf(contents, 'number');
  switch (meaning) {
    case 'sample':
      return shareOf(contents, 'file') >= 0.5 || areNames(contents);
    case 'group':
    case 'comment':
      return shareOf(contents, 'text', 'switch') >= 0.8;
    case 'row_number':
      return contents.counting;
    case 'pitch_keycenter':
      return areRoots(state, contents);
    case 'key':
    case 'lokey':
    case 'hikey':
      return isKeys(contents) && isOrdered(state, contents, meaning, ['lokey', 'hikey']);
    case 'key_range':
      return shareOf(contents, 'note-range', 'number-range') >= nearlyAll || isKeys(contents);
    case 'lovel':
    case 'hivel':
      return areVelocities(contents) && isOrdered(state, contents, meaning, ['lovel', 'hivel']);
    case 'velocity_range':
      return areVelocities(contents) || shareOf(contents, 'number-range') >= nearlyAll;
    case 'dynamics':
      return contents.dynamicLetters + contents.dynamicWords >= contents.filled * nearlyAll;
    case 'volume':
    case 'attenuation':
      return numbers >= nearlyAll && contents.least >= -144 && contents.greatest <= 127;
    case 'tune':
    case 'transpose':
      return (
        numbers >= nearlyAll && (contents.negative > 0 || contents.greatest === 0 || contents.units.size > 0)
      );
    case 'pan':
      return (
        shareOf(contents, 'pan', 'number') >= nearlyAll &&
        (contents.counts.pan > 0 || (contents.least >= -127 && contents.greatest <= 127))
      );
    case 'loop':
      return shareOf(contents, 'switch', 'number-range') >= nearlyAll;
    case 'offset':
      return numbers >= nearlyAll && contents.negative === 0;
    case 'loop_start':
    case 'loop_end':
    case 'loop_length':
    case 'end':
      return numbers >= nearlyAll && contents.negative === 0 && contents.greatest > 127;
    case 'seq_position':
      return numbers >= nearlyAll && runsFromOne(contents);
    case 'seq_length':
      return (
        numbers >= nearlyAll &&
        contents.fractional === 0 &&
        contents.least >= 1 &&
        contents.greatest <= mostTurns
      );
    case 'trigger':
      return contents.triggers >= contents.filled * nearlyAll;
    case 'enabled':
    case 'disabled':
      return contents.counts.switch + contents.bits >= contents.filled * nearlyAll;
    case 'key_count':
      return (
        numbers >= nearlyAll && contents.fractional === 0 && contents.least >= 1 && contents.greatest <= 128
      );
    case 'keyswitch':
      return isKeys(contents);
    case 'deviation':
    case 'delay_time':
    case 'attack_time':
    case 'hold_time':
    case 'decay_time':
    case 'sustain_level':
    case 'release_time':
      return (
        numbers >= nearlyAll && (contents.fractional > 0 || contents.units.size > 0 || contents.negative > 0)
      );
    case 'fade_in':
    case 'fade_out':
      return shareOf(contents, 'number-range') >= nearlyAll;
    case 'mute_group':
    case 'off_by':
    case 'mutes':
    case 'random':
    case 'envelope':
      return false;
    case 'sample_rate':
      return numbers >= nearlyAll && contents.least >= 4000;
    case 'unknown':
      return false;
  }
}

function areNames(contents: ColumnContents): boolean {
  return shareOf(contents, 'text') >= 0.8 && contents.distinct * 2 > Math.min(contents.filled, 256);
}

/** Keys that lie within the key ranges of their rows, as far as those are known. */
function areRoots(state: ColumnState, contents: ColumnContents): boolean {
  if (!isKeys(contents)) return false;
  const [low, high] = [state.contentsOf('lokey'), state.contentsOf('hikey')];
  return (
    (!low || orderShare(low, contents) >= nearlyAll) && (!high || orderShare(contents, high) >= nearlyAll)
  );
}

function isOrdered(
  state: ColumnState,
  contents: ColumnContents,
  meaning: ColumnMeaning,
  [low, high]: readonly [ColumnMeaning, ColumnMeaning],
): boolean {
  const [lows, highs] = [state.contentsOf(low), state.contentsOf(high)];
  if (meaning === low && highs) return orderShare(contents, highs) >= nearlyAll;
  if (meaning === high && lows) return orderShare(lows, contents) >= nearlyAll;
  return true;
}

function areVelocities(contents: ColumnContents): boolean {
  const whole = isKeys(contents) && !contents.named;
  return whole || contents.portions + contents.bits >= contents.filled * nearlyAll;
}
