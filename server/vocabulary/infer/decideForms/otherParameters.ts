import { saysNone } from '../../../trade/languages/cellWords';
import type { LayerEnds } from '../../../trade/layerLimits';
import type { ValueForm, VocabularyParameter } from '../../vocabulary';
import type { Assigned } from '../assign';
import { parameterAt } from '../draft';
import type { ColumnFacts } from '../values/columnFacts';
import type { InferredTarget } from '../words/meaningRules';
import { startByNames } from '../words/releaseNames';
import {
  direction,
  filterType,
  loopMode,
  loopUntil,
  offMode,
  pitchFollow,
  triggerOfName,
} from '../words/words';
import { loopParameters } from './loopParameters';
import { unitTextOf } from './unitText';
import { explainedForm, switchForm, wordsForm } from './wordForms';

type NumberForm = Extract<ValueForm, { kind: 'number' }>;
type WordsForm = Extract<ValueForm, { kind: 'words' }>;

/** Parameters that are said in words, with what a word says. */
const wordParameters: Readonly<Record<InferredTarget, (word: string) => string | undefined>> = {
  loop_type: (word) => loopMode(word)?.type,
  trigger: triggerOfName,
  direction,
  off_mode: offMode,
  fil_type: filterType,
};

/** Targets that switch something, with the parameter and its values. */
const switches: Readonly<Record<InferredTarget, readonly [parameter: string, on: string, off: string]>> = {
  one_shot: ['loop_mode', 'one_shot', 'no_loop'],
  release_switch: ['trigger', 'release', 'attack'],
  reverse: ['direction', 'reverse', 'forward'],
  pitch_fixed: ['pitch_keytrack', '0', '100'],
};

/** The parameters of a place whose form follows from itself alone. */
export function otherParameters(
  one: Assigned,
  assigned: readonly Assigned[],
  chain: readonly string[],
): VocabularyParameter[] {
  const { target, facts } = one;
  const plain = (parameter: string, form: ValueForm) => [parameterAt(one, parameter, form)];
  const meaning = wordParameters[target];
  if (meaning && one.words) return plain(target, explainedForm(one, one.words, meaning));
  if (meaning) return plain(target, wordsForm(one, meaning));
  const switched = switches[target];
  if (switched) {
    const [parameter, on, off] = switched;
    return plain(parameter, switchForm(one, on, off));
  }
  const number: NumberForm = { kind: 'number', ...unitTextOf(facts) };
  // No group is often written as 0.
  const group: NumberForm | WordsForm = groupNumbers(one, assigned) ?? {
    ...number,
    ...(facts.least === 0 && { none: 0 }),
  };
  switch (target) {
    case 'label':
    case 'group_name': {
      const start = startByNames(one, assigned);
      const label = [
        ...plain(labelFor(one, chain.length, assigned), { kind: 'text' }),
        ...(start ? plain('trigger', start) : []),
      ];
      const numbers = target === 'group_name' && groupNumbers(one, assigned);
      return numbers ? [...label, ...plain('group', numbers)] : label;
    }
    case 'dynamics':
      return layerParameters(one);
    case 'sw_label':
      return plain('sw_label', { kind: 'text' });
    case 'loop':
    case 'loop_on':
      return loopParameters(one, assigned);
    case 'pitch_follow':
      return plain('pitch_keytrack', wordsForm(one, pitchFollow));
    case 'loop_until':
      return plain('loop_mode', wordsForm(one, loopUntil));
    case 'choke': {
      const hasOff = assigned.some((other) => other.target === 'off_by');
      return hasOff ? plain('group', group) : [...plain('group', group), ...plain('off_by', group)];
    }
    // What is silenced by a number that no region has is silenced by its own.
    case 'off_by':
      return facts.numeric > 0 && !assigned.some((other) => namesGroup.has(other.target))
        ? [...plain('group', group), ...plain('off_by', group)]
        : plain('off_by', group);
    case 'channel':
      return [...plain('lochan', number), ...plain('hichan', number)];
    case 'octave':
      return [];
    case 'seq_position':
      return plain('seq_position', { ...number, ...(facts.least === 0 && { plus: 1 }) });
    default: {
      const level = sustainLevel(target, one);
      if (level) return plain(target, level);
      const times = factorOf(target, facts);
      return plain(target, { kind: 'number', ...(times !== undefined && { times }), ...unitTextOf(facts) });
    }
  }
}

/** What gives regions a group that others can be silenced by. */
const namesGroup: ReadonlySet<InferredTarget> = new Set(['group', 'group_name', 'choke']);

/** The velocities of layers by what stands for each; the high ends of those that reach up to the next one follow from that. */
function layerParameters(one: Assigned): VocabularyParameter[] {
  const ends = one.layers ?? one.shared?.ends ?? new Map<string, LayerEnds>();
  const form = (end: keyof LayerEnds): WordsForm => ({
    kind: 'words',
    words: Object.fromEntries([...ends].map(([name, velocities]) => [name, String(velocities[end])])),
  });
  const low = parameterAt(one, 'lovel', form('low'));
  return one.shared?.areOpen ? [low] : [low, parameterAt(one, 'hivel', form('high'))];
}

/** Where groups are silenced by name, the numbers of their names; `undefined` where numbers are written. */
function groupNumbers(one: Assigned, assigned: readonly Assigned[]): WordsForm | undefined {
  const silencing = assigned.filter(
    ({ target, facts }) => (target === 'off_by' || target === 'choke') && facts.numeric === 0,
  );
  if (silencing.length === 0 || one.facts.numeric > 0) return undefined;
  const all = assigned.filter((other) => silencing.includes(other) || other.target === 'group_name');
  const names = new Set(all.flatMap(({ facts }) => [...facts.tally.keys()]));
  names.delete('__proto__');
  const words: Record<string, string> = {};
  let number = 0;
  for (const name of names) words[name] = saysNone(name) ? '' : String(++number);
  return { kind: 'words', words };
}

/** A sustain level that is written as a level in dB or from 0 to 127; `undefined` for a percentage and other parameters. */
function sustainLevel(target: InferredTarget, { facts, unit }: Assigned): ValueForm | undefined {
  if (!target.endsWith('eg_sustain') || target === 'fileg_sustain') return undefined;
  if (facts.unit === 'dB' || unit === 'dB') return { kind: 'level', unit: 'dB', ...unitTextOf(facts) };
  if (facts.unit !== undefined || unit !== undefined || facts.greatest <= 100 || facts.greatest > 127)
    return undefined;
  return { kind: 'level', unit: 'sevenBits' };
}

/** What a parameter's value is multiplied by where it is written, by the size of its numbers; `undefined` for 1. */
function factorOf(
  target: InferredTarget,
  { unit, unitText, least, greatest }: ColumnFacts,
): number | undefined {
  switch (target) {
    case 'lorand':
    case 'hirand':
      return greatest > 1 ? 100 : undefined;
    case 'ampeg_sustain':
    case 'fileg_sustain':
    case 'amp_veltrack':
    case 'pitch_keytrack':
      return unit !== 'percent' && Math.abs(greatest) <= 1 ? 0.01 : undefined;
    case 'bend_up':
    case 'bend_down':
      return Math.abs(greatest) <= 48 && Math.abs(least) <= 48 ? 0.01 : undefined;
    case 'cutoff':
      return greatest <= 22 && unitText?.trim().toLowerCase() === 'khz' ? 0.001 : undefined;
    default:
      return undefined;
  }
}

/**
 * The parameter for the name of an element: with names at two depths of groups, the outer one is that of a master. What several
 * regions share, as a microphone, is the name of their group.
 */
function labelFor(
  { target: named, column: { level, listed } }: Assigned,
  levels: number,
  assigned: readonly Assigned[],
): string {
  if (level === levels - 1) return listed || named === 'group_name' ? 'group_label' : 'region_label';
  if (level === 0) return 'global_label';
  const isAroundOther = assigned.some(
    ({ target, column }) =>
      (target === 'label' || target === 'group_name') && column.level > level && column.level < levels - 1,
  );
  return isAroundOther ? 'master_label' : 'group_label';
}
