import type { ColumnMeaning } from '../../trade/meaning';
import { runsFromOne } from '../headings/headingFit';
import { mostly, orderShare } from './byValues/keyOrder';
import type { ColumnContents } from './columnContents';
import { shareOf } from './columnContents';
import type { ColumnState } from './columnState';
import { isKeys } from './columnState';

/** Nearly all cells have to agree where a heading is only like a known one. */
const nearlyAll = 0.9;
const mostTurns = 64;

/**
 * Whether the cells of a column by themselves agree with a meaning that its heading is only like: `Rot` is neither a root nor a
 * round robin where its numbers are angles.
 */
export function agrees(state: ColumnState, index: number, meaning: ColumnMeaning): boolean {
  const contents = state.contents[index];
  return contents.filled === 0 || likenesses[meaning](contents, state, shareOf(contents, 'number'));
}

/** Whether cells agree; `numbers` is the share of them that are numbers. */
type Likeness = (contents: ColumnContents, state: ColumnState, numbers: number) => boolean;

const orderedKeys =
  (meaning: 'key' | 'lokey' | 'hikey'): Likeness =>
  (contents, state) =>
    isKeys(contents) && isOrdered(state, contents, meaning, ['lokey', 'hikey']);
const orderedVelocities =
  (meaning: 'lovel' | 'hivel'): Likeness =>
  (contents, state) =>
    areVelocities(contents) && isOrdered(state, contents, meaning, ['lovel', 'hivel']);
const isLabel: Likeness = (contents) => shareOf(contents, 'text', 'switch') >= 0.8;
const isLevel: Likeness = ({ least, greatest }, _state, numbers) =>
  numbers >= nearlyAll && least >= -144 && greatest <= 127;
const isTuning: Likeness = ({ negative, greatest, units }, _state, numbers) =>
  numbers >= nearlyAll && (negative > 0 || greatest === 0 || units.size > 0);
const isPosition: Likeness = (contents, _state, numbers) =>
  numbers + shareOf(contents, 'switch') >= nearlyAll && contents.negative === 0 && arePositions(contents);
/** Scripts write -1 for the last frame. */
const isLoopEnd: Likeness = (contents, _state, numbers) =>
  numbers + shareOf(contents, 'switch') >= nearlyAll &&
  (contents.negative === 0 || contents.least === -1) &&
  arePositions(contents);
const isSwitch: Likeness = ({ counts, bits, filled }) => counts.switch + bits >= filled * nearlyAll;
const isMeasure: Likeness = ({ fractional, units, negative }, _state, numbers) =>
  numbers >= nearlyAll && (fractional > 0 || units.size > 0 || negative > 0);
const isCount =
  (greatest: number): Likeness =>
  (contents, _state, numbers) =>
    numbers >= nearlyAll && contents.fractional === 0 && contents.least >= 1 && contents.greatest <= greatest;
const isRange: Likeness = (contents) =>
  shareOf(contents, 'number-range') > 0 &&
  contents.counts['number-range'] + contents.wholes >= contents.filled * nearlyAll;
/** Cells alone tell nothing of these. */
const never: Likeness = () => false;

const likenesses: Readonly<Record<ColumnMeaning, Likeness>> = {
  sample: (contents) => shareOf(contents, 'file') >= 0.5 || areNames(contents),
  group: isLabel,
  comment: isLabel,
  row_number: ({ counting }) => counting,
  pitch_keycenter: (contents, state) => areRoots(state, contents),
  key: orderedKeys('key'),
  lokey: orderedKeys('lokey'),
  hikey: orderedKeys('hikey'),
  key_range: (contents) =>
    shareOf(contents, 'note-range', 'number-range') + contents.wholes / contents.filled >= nearlyAll ||
    isKeys(contents),
  lovel: orderedVelocities('lovel'),
  hivel: orderedVelocities('hivel'),
  velocity_range: (contents, state, numbers) => areVelocities(contents) || isRange(contents, state, numbers),
  dynamics: ({ dynamicLetters, dynamicWords, filled }) => dynamicLetters + dynamicWords >= filled * nearlyAll,
  volume: isLevel,
  attenuation: isLevel,
  tune: isTuning,
  transpose: isTuning,
  pan: (contents) =>
    shareOf(contents, 'pan', 'number') >= nearlyAll &&
    (contents.counts.pan > 0 || (contents.least >= -127 && contents.greatest <= 127)),
  loop: (contents) => shareOf(contents, 'switch', 'number-range') >= nearlyAll,
  loop_start: isPosition,
  loop_end: isLoopEnd,
  loop_length: isPosition,
  offset: (contents, state, numbers) =>
    numbers >= nearlyAll &&
    contents.negative === 0 &&
    (arePositions(contents) || rangeMeanings.some((meaning) => state.taken.has(meaning))),
  end: isPosition,
  length: isPosition,
  seq_position: (contents, _state, numbers) => numbers >= nearlyAll && runsFromOne(contents),
  seq_length: isCount(mostTurns),
  trigger: ({ triggers, filled }) => triggers >= filled * nearlyAll,
  enabled: isSwitch,
  disabled: isSwitch,
  key_count: isCount(128),
  keyswitch: isKeys,
  deviation: isMeasure,
  delay_time: isMeasure,
  attack_time: isMeasure,
  hold_time: isMeasure,
  decay_time: isMeasure,
  sustain_level: isMeasure,
  release_time: isMeasure,
  fade_in: isRange,
  fade_out: isRange,
  mute_group: never,
  off_by: never,
  mutes: never,
  random: never,
  envelope: never,
  sample_rate: ({ least }, _state, numbers) => numbers >= nearlyAll && least >= 4000,
  unknown: never,
};

const rangeMeanings = ['lokey', 'hikey', 'key_range', 'key'] as const;

/** Whether numbers are no keys: they are greater, have fractions or a unit that positions have. */
function arePositions({ greatest, fractional, units }: ColumnContents): boolean {
  return (
    greatest > 127 ||
    fractional > 0 ||
    (['s', 'ms', 'frames', 'percent'] as const).some((one) => units.has(one))
  );
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
  // Where the ends of some rows stand the other way round, those of the others tell.
  const holds = low === 'lokey' ? (share: number) => share > mostly : (share: number) => share >= nearlyAll;
  if (meaning === low && highs) return holds(orderShare(contents, highs));
  if (meaning === high && lows) return holds(orderShare(lows, contents));
  return true;
}

function areVelocities(contents: ColumnContents): boolean {
  const whole = isKeys(contents) && !contents.named;
  return whole || contents.portions + contents.bits >= contents.filled * nearlyAll;
}
