import { levelScalePhrases } from '../../../trade/scales/levelScale';
import type { ValueForm, VocabularyParameter } from '../../vocabulary';
import { addedValues } from '../addedValues';
import type { Assigned } from '../assign';
import type { Alternative, Draft, Settled } from '../draft';
import { firstValueOf, parameterAt, placeName } from '../draft';
import { keyTargets, positionTargets, timeTargets, velocityTargets } from '../plausible';
import type { Rows } from '../rows';
import type { SampleFiles } from '../sampleFiles';
import { parameterWords } from '../words/parameterWords';
import {
  direction,
  filterType,
  loopMode,
  offMode,
  oppositeOf,
  panSide,
  switchWord,
  triggerWord,
} from '../words/words';
import { decideKeyForms } from './keyForms';
import { decidePositionForms } from './positionForms';
import type { FormReading } from './soundForms';
import { decideLevelForm, decidePanForm, decideTuningForm } from './soundForms';
import { decideTimeForm } from './timeForms';
import { unitTextOf } from './unitText';
import { decideVelocityForms } from './velocityForms';

/** Makes parameters of places, and says what was decided about each. */
export function settle(
  assigned: readonly Assigned[],
  rows: Rows,
  chain: readonly string[],
  files: SampleFiles,
): { settled: Settled[]; drafts: Draft[] } {
  const drafts: Draft[] = [...files.drafts];
  const idOf = idsOf(assigned, chain);
  const keys = assigned.filter(({ target }) => keyTargets.has(target));
  const keyForms = decideKeyForms(keys, files, rows.count);
  const velocities = assigned.filter(({ target }) => velocityTargets.has(target));
  const velocityForms = decideVelocityForms(velocities);
  const positions = assigned.filter(({ target }) => positionTargets.has(target));
  const positionForms = decidePositionForms(positions, files, idOf);
  const times = assigned.filter(
    (one) => timeTargets.has(one.target) && one.unit === undefined && one.facts.unit === undefined,
  );
  drafts.push(...keyForms.drafts, ...velocityForms.drafts, ...positionForms.drafts);

  const added = addedValues(assigned);
  const settled: Settled[] = [];
  for (const one of assigned) {
    const { target } = one;
    const id = idOf(one);
    const parameters: VocabularyParameter[] = [];
    const read = (parameter: string, reading: FormReading, what: string) => {
      parameters.push(parameterAt(one, parameter, reading.form));
      drafts.push(formDraft(`${id}.${what}`, one, parameter, reading));
    };
    if (target === 'sample') parameters.push(parameterAt(one, 'sample', files.form));
    else if (keyTargets.has(target)) {
      const form = keyForms.formOf(one);
      const hasRoot = keys.some((other) => other !== one && other.target === 'pitch_keycenter');
      const names = target === 'key' && hasRoot ? ['lokey', 'hikey'] : [target];
      for (const name of names) parameters.push(parameterAt(one, name, form));
    } else if (velocityTargets.has(target))
      parameters.push(parameterAt(one, target, velocityForms.formOf(one)));
    else if (positionTargets.has(target)) {
      if (target === 'loop_crossfade') continue;
      parameters.push(parameterAt(one, positionForms.parameterOf(one), positionForms.formOf(one)));
      if (target === 'loop_start' && one.part === 1) parameters.push(...loopWords(one, assigned));
    } else if (timeTargets.has(target)) read(target, decideTimeForm(one, times), 'unit');
    else if (target === 'volume' || target === 'attenuation')
      read(added.get(one) ?? 'volume', decideLevelForm(one), 'unit');
    else if (target === 'tune') read(added.get(one) ?? 'tune', decideTuningForm(one), 'unit');
    else if (target === 'transpose') {
      parameters.push(
        parameterAt(one, added.get(one) ?? 'transpose', {
          kind: 'tuning',
          unit: 'semitones',
          ...unitTextOf(one.facts),
        }),
      );
    } else if (target === 'pan') {
      if (one.facts.numeric > 0 || [...one.facts.tally.keys()].some((text) => /\d/.test(text)))
        read('pan', decidePanForm(one), 'range');
      else parameters.push(parameterAt(one, 'pan', wordsForm(one, panSide)));
    } else parameters.push(...otherParameters(one, assigned, chain));
    if (parameters.length === 0) continue;
    settled.push({ assigned: one, parameters });
    drafts.push(placeDraft(id, one, parameters, chain));
    const name = added.get(one);
    if (name !== undefined) drafts.push(addedDraft(id, one, name, chain));
  }
  return { settled, drafts };
}

/** An id for each place: the parameter, with the element where several have it. */
function idsOf(assigned: readonly Assigned[], chain: readonly string[]): (one: Assigned) => string {
  const ids = new Map<Assigned, string>();
  const taken = new Set<string>();
  for (const one of [...assigned].sort((a, b) => b.column.level - a.column.level)) {
    const name = parameterNames[one.target] ?? one.target;
    let id = name;
    if (taken.has(id)) id = `${chain[one.column.level]}/${name}`;
    taken.add(id);
    ids.set(one, id);
  }
  return (one) => ids.get(one) as string;
}

const parameterNames: Readonly<Record<string, string>> = {
  loop_length: 'loop_end',
  sample_length: 'end',
  attenuation: 'volume',
  loop: 'loop_mode',
  one_shot: 'loop_mode',
  release_switch: 'trigger',
  reverse: 'direction',
  choke: 'group',
  group_name: 'group_label',
};

function wordsForm({ facts }: Assigned, meaning: (word: string) => string | undefined): ValueForm {
  const words: Record<string, string> = {};
  for (const word of facts.tally.keys()) {
    const value = meaning(word);
    if (value !== undefined && word !== '__proto__') words[word] = value;
  }
  return { kind: 'words', words };
}

/** Words with the value of each, and those of a switch with the word that says the opposite. */
function switchForm(one: Assigned, on: string, off: string): ValueForm {
  const form = wordsForm(one, (word) => (switchWord(word) ? on : off));
  return form.kind === 'words'
    ? { kind: 'words', words: withOpposites(form.words, (word) => (switchWord(word) ? on : off)) }
    : form;
}

function withOpposites(
  words: Record<string, string>,
  meaning: (word: string) => string | undefined,
): Record<string, string> {
  const entries = Object.entries(words);
  const [only] = entries;
  if (entries.length !== 1 || !only) return words;
  const other = oppositeOf(only[0]);
  const value = other === undefined ? undefined : meaning(other);
  return other === undefined || value === undefined ? words : { ...words, [other]: value };
}

function otherParameters(
  one: Assigned,
  assigned: readonly Assigned[],
  chain: readonly string[],
): VocabularyParameter[] {
  const { target, facts, column } = one;
  const number = (times?: number): Extract<ValueForm, { kind: 'number' }> => ({
    kind: 'number',
    ...(times !== undefined && { times }),
    ...unitTextOf(facts),
  });
  const plain = (parameter: string, form: ValueForm) => [parameterAt(one, parameter, form)];
  switch (target) {
    case 'label':
    case 'group_name':
      return plain(labelFor(column.level, chain.length, assigned), { kind: 'text' });
    case 'sw_label':
      return plain('sw_label', { kind: 'text' });
    case 'loop': {
      const form = wordsForm(one, (word) => loopMode(word)?.mode);
      const words = form.kind === 'words' ? withOpposites(form.words, (word) => loopMode(word)?.mode) : {};
      const parameters = plain('loop_mode', { kind: 'words', words });
      const types = [...facts.tally.keys()].map((word) => loopMode(word)?.type);
      const hasOwnType = assigned.some((other) => other.target === 'loop_type');
      if (!hasOwnType && types.some((type) => type === 'alternate' || type === 'backward')) {
        parameters.push(
          parameterAt(
            one,
            'loop_type',
            wordsForm(one, (word) => loopMode(word)?.type ?? 'forward'),
          ),
        );
      }
      return parameters;
    }
    case 'one_shot':
      return plain('loop_mode', switchForm(one, 'one_shot', 'no_loop'));
    case 'loop_type':
      return plain(
        'loop_type',
        wordsForm(one, (word) => loopMode(word)?.type),
      );
    case 'release_switch':
      return plain('trigger', switchForm(one, 'release', 'attack'));
    case 'reverse':
      return plain('direction', switchForm(one, 'reverse', 'forward'));
    case 'trigger':
      return plain('trigger', wordsForm(one, triggerWord));
    case 'direction':
      return plain('direction', wordsForm(one, direction));
    case 'off_mode':
      return plain('off_mode', wordsForm(one, offMode));
    case 'fil_type':
      return plain('fil_type', wordsForm(one, filterType));
    case 'choke': {
      const hasOff = assigned.some((other) => other.target === 'off_by');
      // No group is often written as 0.
      const form = { ...number(), ...(facts.least === 0 && { none: 0 }) };
      return hasOff ? plain('group', form) : [...plain('group', form), ...plain('off_by', form)];
    }
    case 'off_by':
      return plain('off_by', { ...number(), ...(facts.least === 0 && { none: 0 }) });
    case 'channel':
      return [...plain('lochan', number()), ...plain('hichan', number())];
    case 'lorand':
    case 'hirand':
      return plain(target, number(facts.greatest > 1 ? 100 : undefined));
    case 'ampeg_sustain':
    case 'fileg_sustain':
    case 'amp_veltrack':
    case 'pitch_keytrack':
      return plain(
        target,
        number(facts.unit !== 'percent' && Math.abs(facts.greatest) <= 1 ? 0.01 : undefined),
      );
    case 'bend_up':
    case 'bend_down':
      return plain(
        target,
        number(Math.abs(facts.greatest) <= 48 && Math.abs(facts.least) <= 48 ? 0.01 : undefined),
      );
    case 'cutoff':
      return plain(
        target,
        number(
          facts.greatest <= 22 && one.facts.unitText?.trim().toLowerCase() === 'khz' ? 0.001 : undefined,
        ),
      );
    case 'octave':
      return [];
    default:
      return plain(target, number());
  }
}

/** Words such as `none` among ranges of loop points. */
function loopWords(one: Assigned, assigned: readonly Assigned[]): VocabularyParameter[] {
  if (assigned.some(({ target }) => target === 'loop' || target === 'one_shot')) return [];
  const words: Record<string, string> = {};
  for (const word of one.facts.tally.keys()) {
    const mode = /\p{L}{2}/u.test(word) ? loopMode(word)?.mode : undefined;
    if (mode !== undefined) words[word] = mode;
  }
  if (Object.keys(words).length === 0) return [];
  return [{ parameter: 'loop_mode', at: one.column.at, form: { kind: 'words', words } }];
}

/** The parameter for the name of an element: with names at two depths of groups, the outer one is that of a master. */
function labelFor(level: number, levels: number, assigned: readonly Assigned[]): string {
  if (level === levels - 1) return 'region_label';
  if (level === 0) return 'global_label';
  const isAroundOther = assigned.some(
    ({ target, column }) =>
      (target === 'label' || target === 'group_name') && column.level > level && column.level < levels - 1,
  );
  return isAroundOther ? 'master_label' : 'group_label';
}

function formDraft(id: string, one: Assigned, parameter: string, reading: FormReading): Draft {
  const { at, part } = parameterAt(one, parameter, reading.form);
  return {
    id,
    message: `${placeName(one)} is ${parameterWords[parameter] ?? parameter} ${formWords(reading.form)}.`,
    confidence: reading.confidence,
    evidence: [reading.reason],
    span: firstValueOf(one),
    isAbout: (other) => other.parameter === parameter && other.at === at && other.part === part,
    alternatives: reading.others.map(
      ({ label, form }): Alternative => ({ label, change: (old) => ({ ...old, form }) }),
    ),
  };
}

function formWords(form: ValueForm): string {
  switch (form.kind) {
    case 'level':
      return `${levelScalePhrases[form.unit]}${form.attenuation ? ', greater is quieter' : ''}`;
    case 'tuning':
      return form.unit === 'ratio' ? 'as a ratio' : `in ${form.unit}`;
    case 'time':
      return `in ${form.unit}`;
    case 'pan':
      return `from ${form.left} over ${form.centre} to ${form.right}`;
    default:
      return '';
  }
}

function placeDraft(
  id: string,
  one: Assigned,
  parameters: readonly VocabularyParameter[],
  chain: readonly string[],
): Draft {
  const names = parameters.map(({ parameter }) => parameterWords[parameter] ?? parameter);
  const where = `<${chain[one.column.level]}>`;
  const part = one.part === undefined ? '' : one.part === 1 ? 'The first part of ' : 'The second part of ';
  const { at } = one.column;
  const isAbout: Draft['isAbout'] = (other, element) =>
    other.at === at &&
    (other.part === one.part || other.part === undefined) &&
    element === chain[one.column.level];
  const [first] = parameters as [VocabularyParameter];
  return {
    id,
    message: `${part}${placeName(one)} of ${where} is ${names.join(' and ')}.`,
    confidence: one.weight,
    evidence: [
      one.evidence ??
        `${one.weight >= 0.75 ? 'Its name says so' : 'Its name could mean that'}, and ${one.facts.filled === 1 ? 'its value fits' : 'its values fit'}.`,
    ],
    span: firstValueOf(one),
    isAbout,
    alternatives: [
      ...one.others
        .filter((target) => simpleTargets.has(target))
        .map(
          (target): Alternative => ({
            label: `it is ${parameterWords[target] ?? target}`,
            change: (old) =>
              old.parameter === first.parameter
                ? { ...old, parameter: target, form: formLike(target, old.form) }
                : old,
          }),
        ),
      { label: 'it is none of these', change: () => undefined },
    ],
  };
}

/** Whether a value of an outer element is added to those of the regions, or stands for regions without one. */
function addedDraft(id: string, one: Assigned, name: string, chain: readonly string[]): Draft {
  const element = chain[one.column.level];
  const inherited = one.target === 'attenuation' ? 'volume' : one.target;
  return {
    id: `${id}.adds`,
    message: `${placeName(one)} of <${element}> is added to ${parameterWords[inherited] ?? inherited} of each region inside.`,
    confidence: 0.65,
    evidence: ['Every region inside has one of its own, which would otherwise take its place.'],
    span: firstValueOf(one),
    isAbout: (other, about) => other.parameter === name && other.at === one.column.at && about === element,
    alternatives: [
      {
        label: 'it counts only where a region has none',
        change: (old) => ({ ...old, parameter: inherited }),
      },
    ],
  };
}

/** Targets that are parameters and need no more than a form of their kind. */
const simpleTargets: ReadonlySet<string> = new Set([
  ...keyTargets,
  ...velocityTargets,
  'offset',
  'end',
  'tune',
  'volume',
]);

function formLike(target: string, old: ValueForm): ValueForm {
  if (keyTargets.has(target)) return old.kind === 'key' ? old : { kind: 'key', written: 'number' };
  if (velocityTargets.has(target)) return old.kind === 'velocity' ? old : { kind: 'velocity', most: 127 };
  if (target === 'tune') return { kind: 'tuning', unit: 'cents' };
  if (target === 'volume') return { kind: 'level', unit: 'dB' };
  return { kind: 'position', unit: 'frames' };
}
