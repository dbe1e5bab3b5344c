import { saysNone } from '../../../trade/languages/cellWords';
import { keyRangesOf } from '../ranges/keyRanges';
import { rangesOf } from '../ranges/rangeText';
import type { InferredTarget } from '../words/meaningRules';
import {
  direction,
  filterType,
  loopMode,
  loopUntil,
  offMode,
  panSide,
  pitchFollow,
  switchWord,
  triggerOfName,
} from '../words/words';
import type { ColumnFacts } from './columnFacts';

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
/** Numbers of groups, which are often written as names. */
const groupTargets: ReadonlySet<InferredTarget> = new Set(['choke', 'off_by']);
const mostGroups = 64;
const turnTargets: ReadonlySet<InferredTarget> = new Set(['seq_position', 'seq_length', 'seq']);
const rangeTargets: ReadonlySet<InferredTarget> = new Set(
  'key_range velocity_range loop_range loop_span sample_range rand_range xfin_velocity_range xfout_velocity_range xfin_key_range xfout_key_range'.split(
    ' ',
  ),
);

/** What the words of a place have to mean for a target that is said in words. */
const wordTargets: Readonly<Record<InferredTarget, (word: string) => unknown>> = {
  loop_type: (word) => loopMode(word)?.type,
  one_shot: switchWord,
  loop_on: switchWord,
  loop_until: loopUntil,
  release_switch: switchWord,
  reverse: switchWord,
  pitch_follow: pitchFollow,
  pitch_fixed: switchWord,
  trigger: triggerOfName,
  direction,
  off_mode: offMode,
  fil_type: filterType,
};

/** Whether what stands in a place can be what its name says. */
export function isPlausible(
  target: InferredTarget,
  facts: ColumnFacts,
  texts: readonly (string | undefined)[],
): boolean {
  const { filled, numeric, whole, notes, unlined, least, greatest } = facts;
  if (filled === 0) return false;
  const areMost = (count: number) => count * 10 >= filled * 9;
  if (keyTargets.has(target)) {
    const areKeys = whole === 0 || (least >= -1 && greatest <= 139);
    const told = notes + whole + unlined;
    // An untuned sound has no root key.
    const untuned = target === 'pitch_keycenter' ? countUntuned(facts) : 0;
    return told > 0 && told * 10 >= (filled - untuned) * 9 && areKeys && facts.unit === undefined;
  }
  if (target === 'key_range') return keyRangesOf(texts) !== undefined;
  if (rangeTargets.has(target) || /^cc_range\d/.test(target)) return rangesOf(texts) !== undefined;
  if (/^(?:lo|hi)cc\d/.test(target)) return areMost(whole) && least >= 0 && greatest <= 127;
  // Nobody records so many takes of one note.
  if (turnTargets.has(target) && greatest > 200) return false;
  if (groupTargets.has(target) && numeric === 0)
    return facts.files === 0 && facts.tally.size < mostGroups && notes < filled;
  if (countTargets.has(target)) return areMost(whole) && least >= -1 && greatest <= 100_000;
  // Numbers are an amount, which other targets are for.
  if (target === 'pitch_follow' && numeric > 0) return false;
  const meaning = wordTargets[target];
  if (meaning) return every(facts, meaning);
  const areNumbers = areMost(numeric);
  switch (target) {
    case 'sample':
      return areMost(facts.files) || (numeric === 0 && notes < filled);
    case 'pan':
      return (
        (areNumbers && least >= -128 && greatest <= 128) ||
        (facts.sided > 0 && filled - facts.sided <= numeric) ||
        every(facts, (word) => panSide(word))
      );
    case 'label':
      return facts.files === 0 && notes < filled;
    case 'group_name':
    case 'sw_label':
      return facts.files === 0;
    case 'loop':
      return every(facts, (word) => loopMode(word)) || rangesOf(texts) !== undefined;
    case 'dynamics':
      return true;
    case 'seq':
      return areMost(whole) || rangesOf(texts) !== undefined;
    case 'octave':
      return false;
    default:
      return areNumbers && isPlausibleSize(target, facts);
  }
}

/** Whether numbers lie where those of a target do. */
function isPlausibleSize(
  target: InferredTarget,
  { least, greatest, notes, isConstant, unit, whole }: ColumnFacts,
): boolean {
  // One for all with a fraction, above the greatest share, is a list of two.
  if (velocityTargets.has(target) && isConstant && whole === 0 && greatest > 1) return false;
  if (velocityTargets.has(target))
    return least >= 0 && greatest <= 256 && (unit === undefined || unit === 'percent');
  if (positionTargets.has(target)) return least >= -1;
  if (timeTargets.has(target)) return least >= 0;
  switch (target) {
    case 'tune':
    case 'transpose':
      // The frequency of the note that instruments are tuned to, 440 Hz (ISO 16) or near it, is no tuning.
      if (isConstant && least >= 390 && least <= 470) return false;
      return least >= -12_000 && greatest <= 12_000 && notes === 0;
    case 'volume':
    case 'attenuation':
      return Math.abs(least) <= 200 && greatest <= 255;
    case 'lorand':
    case 'hirand':
      return least >= 0 && greatest <= 100;
    case 'cutoff':
      return least >= 0;
    default:
      return true;
  }
}

function every(facts: ColumnFacts, holds: (word: string) => unknown): boolean {
  for (const word of facts.tally.keys()) if (holds(word) === undefined) return false;
  return true;
}

/** What a noise has in the place of its root key. */
const unpitched = /^(?:x|not|untuned|unpitched|noise)$/iu;

/** Whether a text in a place of root keys says that there is none, as for a noise. */
export function isUntunedWord(text: string): boolean {
  return saysNone(text) || unpitched.test(text.trim());
}

function countUntuned({ tally }: ColumnFacts): number {
  let count = 0;
  for (const [text, times] of tally) if (isUntunedWord(text)) count += times;
  return count;
}
