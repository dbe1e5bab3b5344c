import type { ColumnFacts } from './columnFacts';
import { rangesOf } from './rangeText';
import type { InferredTarget } from './words/meanings';
import { direction, filterType, loopMode, offMode, panSide, switchWord, triggerWord } from './words/words';

/** Targets whose values are keys. */
export const keyTargets: ReadonlySet<InferredTarget> = new Set(
  'lokey hikey key pitch_keycenter sw_lokey sw_hikey sw_last sw_down sw_up sw_previous sw_default xfin_lokey xfin_hikey xfout_lokey xfout_hikey'.split(
    ' ',
  ),
);
export const velocityTargets: ReadonlySet<InferredTarget> = new Set(
  'lovel hivel xfin_lovel xfin_hivel xfout_lovel xfout_hivel'.split(' '),
);
export const positionTargets: ReadonlySet<InferredTarget> = new Set(
  'offset end loop_start loop_end loop_length sample_length'.split(' '),
);
export const timeTargets: ReadonlySet<InferredTarget> = new Set(
  'ampeg_attack ampeg_hold ampeg_decay ampeg_release ampeg_delay fileg_attack fileg_hold fileg_decay fileg_release pitcheg_attack pitcheg_decay delay loop_crossfade'.split(
    ' ',
  ),
);
/** Whole numbers from 0 or 1 on. */
const countTargets: ReadonlySet<InferredTarget> = new Set(
  'seq_position seq_length polyphony note_polyphony choke off_by group lochan hichan channel loop_count output'.split(
    ' ',
  ),
);
const rangeTargets: ReadonlySet<InferredTarget> = new Set(
  'key_range velocity_range loop_range sample_range rand_range xfin_velocity_range xfout_velocity_range xfin_key_range xfout_key_range'.split(
    ' ',
  ),
);

/** Whether what stands in a place can be what its name says. */
export function isPlausible(
  target: InferredTarget,
  facts: ColumnFacts,
  texts: readonly (string | undefined)[],
): boolean {
  if (facts.filled === 0) return false;
  const { filled, numeric, whole, notes, least, greatest } = facts;
  const most = (count: number) => count * 10 >= filled * 9;
  const allNumbers = most(numeric);
  if (keyTargets.has(target)) {
    return (
      most(notes + whole) && (whole === 0 || (least >= -1 && greatest <= 139)) && facts.unit === undefined
    );
  }
  if (velocityTargets.has(target)) return allNumbers && least >= 0 && greatest <= 256;
  if (rangeTargets.has(target)) return rangesOf(texts) !== undefined;
  if (positionTargets.has(target)) return allNumbers && least >= -1;
  if (timeTargets.has(target)) return allNumbers && least >= 0;
  if (target === 'seq_position' || target === 'seq_length' || target === 'seq') {
    // Nobody records so many takes of one note.
    if (greatest > 200) return false;
  }
  if (countTargets.has(target)) return most(whole) && least >= -1 && greatest <= 100_000;
  switch (target) {
    case 'sample':
      return most(facts.files) || (numeric === 0 && notes < filled);
    case 'tune':
    case 'transpose':
      // The frequency of the note that instruments are tuned to, 440 Hz (ISO 16) or near it, is no tuning.
      if (facts.isConstant && least >= 390 && least <= 470) return false;
      return allNumbers && least >= -12_000 && greatest <= 12_000 && facts.notes === 0;
    case 'volume':
    case 'attenuation':
      return allNumbers && Math.abs(least) <= 200 && greatest <= 200;
    case 'pan':
      return (
        (allNumbers && least >= -128 && greatest <= 128) ||
        (facts.sided > 0 && filled - facts.sided <= numeric) ||
        every(facts, (word) => panSide(word))
      );
    case 'label':
      return facts.files === 0 && notes < filled;
    case 'group_name':
      return facts.files === 0;
    case 'loop':
      return every(facts, (word) => loopMode(word)) || rangesOf(texts) !== undefined;
    case 'loop_type':
      return every(facts, (word) => loopMode(word)?.type);
    case 'one_shot':
    case 'release_switch':
    case 'reverse':
      return every(facts, switchWord);
    case 'trigger':
      return every(facts, triggerWord);
    case 'direction':
      return every(facts, direction);
    case 'off_mode':
      return every(facts, offMode);
    case 'fil_type':
      return every(facts, filterType);
    case 'seq':
      return most(whole) || rangesOf(texts) !== undefined;
    case 'lorand':
    case 'hirand':
      return allNumbers && least >= 0 && greatest <= 100;
    case 'sw_label':
      return facts.files === 0;
    case 'cutoff':
      return allNumbers && least >= 0;
    case 'octave':
      return false;
    default:
      return allNumbers;
  }
}

function every(facts: ColumnFacts, holds: (word: string) => unknown): boolean {
  for (const word of facts.tally.keys()) if (holds(word) === undefined) return false;
  return true;
}
