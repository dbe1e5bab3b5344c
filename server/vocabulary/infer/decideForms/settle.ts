import type { ValueForm, VocabularyParameter } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft, Settled } from '../draft';
import { parameterAt } from '../draft';
import { singleRoots } from '../ranges/singleRoots';
import type { SampleFiles } from '../samples/sampleFiles';
import { saysSo } from '../saysSo';
import { combinedKind } from '../stated/combining';
import type { XmlStatements } from '../stated/statements';
import { addedValues, isOverridden } from '../values/addedValues';
import {
  isUntunedWord,
  keyTargets,
  positionTargets,
  timeTargets,
  velocityTargets,
} from '../values/plausible';
import type { Rows } from '../values/rows';
import { panSide } from '../words/words';
import type { KeyForms } from './keyForms';
import { decideKeyForms } from './keyForms';
import { wordedLoops } from './loopParameters';
import { otherParameters } from './otherParameters';
import { addedDraft, formDraft, overriddenDraft, placeDraft } from './placeDrafts';
import type { PositionForms } from './positionForms';
import { decidePositionForms } from './positionForms';
import type { FormReading } from './soundForms';
import { decideLevelForm, decidePanForm, decideTuningForm } from './soundForms';
import { decideTimeForm } from './timeForms';
import { unitTextOf } from './unitText';
import type { VelocityForms } from './velocityForms';
import { decideVelocityForms } from './velocityForms';
import { wordsForm } from './wordForms';

/** Makes parameters of places, and says what was decided about each. */
export function settle(
  assigned: readonly Assigned[],
  rows: Rows,
  chain: readonly string[],
  files: SampleFiles,
  stated: XmlStatements,
): { settled: Settled[]; drafts: Draft[] } {
  const idOf = idsOf(assigned, chain);
  const settling = new Settling(assigned, rows, chain, files, idOf, stated);
  const drafts: Draft[] = [...files.drafts, ...settling.drafts];
  const settled: Settled[] = [];
  for (const one of assigned) {
    const { parameters, reading: found } = settling.parametersOf(one);
    const reading =
      found && one.stated ? { ...found, ...asStated(one.stated.text, found.form), isLeft: false } : found;
    if (reading)
      drafts.push(formDraft(`${idOf(one)}.${reading.what}`, one, parameters[0].parameter, reading));
    if (parameters.length === 0) continue;
    settled.push({ assigned: one, parameters });
    if (reading?.isLeft) continue;
    drafts.push(placeDraft(idOf(one), one, parameters, chain));
    const name = settling.added.get(one);
    if (name !== undefined)
      drafts.push(addedDraft(idOf(one), one, name, chain, nestingOf(one, stated)?.text));
    else if (isAddedInVain(one, assigned, stated))
      drafts.push(overriddenDraft(idOf(one), one, parameters[0], chain, nestingOf(one, stated)?.text));
    else if (!nestingOf(one, stated) && isOverridden(one, assigned, settling.added))
      drafts.push(overriddenDraft(idOf(one), one, parameters[0], chain));
  }
  return { settled, drafts };
}

/** What the document says of how a value of an outer element goes with those of regions: of that value, else of all. */
function nestingOf({ target }: Assigned, { combining, nesting }: XmlStatements) {
  const kind = combinedKind(target);
  return (kind && combining.get(kind)) ?? nesting;
}

/** Whether the document says that a value of an outer element is added to those of regions, for which there is no parameter. */
function isAddedInVain(one: Assigned, assigned: readonly Assigned[], { combining }: XmlStatements): boolean {
  const isInner = ({ target, column }: Assigned) => target === 'pan' && column.level > one.column.level;
  return one.target === 'pan' && combining.get('pan')?.is === 'adds' && assigned.some(isInner);
}

/** How a text says that levels of seven or eight bits are shares of the amplitude. */
const saysLaw = /linear|linéa|lineal|lineær|lineair|amplitud|ampiezza|factor|faktor|facteur|fattore/iu;

/** What stands in the document needs no further evidence; only the curve of a level such as 0 to 127 is seldom said. */
function asStated(text: string, form: ValueForm): Pick<FormReading, 'confidence' | 'reason' | 'isOpen'> {
  const isCurved = form.kind === 'level' && (form.unit === 'sevenBits' || form.unit === 'eightBits');
  if (!isCurved || saysLaw.test(text)) return { confidence: 0.96, reason: saysSo(text), isOpen: false };
  const reason = `${saysSo(text)} No curve is named, so each number is taken as a share of the full amplitude.`;
  return { confidence: 0.9, reason, isOpen: true };
}

/** The parameters that a place gives, and, where its form had to be chosen, how. */
interface Made {
  parameters: VocabularyParameter[];
  reading?: FormReading & { what: 'unit' | 'range' };
}

/** What is decided for places of one kind together. */
class Settling {
  readonly added: ReadonlyMap<Assigned, string>;
  readonly drafts: readonly Draft[];
  readonly #assigned: readonly Assigned[];
  readonly #chain: readonly string[];
  readonly #files: SampleFiles;
  readonly #keyForms: KeyForms;
  readonly #velocityForms: VelocityForms;
  readonly #positionForms: PositionForms;
  readonly #times: readonly Assigned[];

  constructor(
    assigned: readonly Assigned[],
    rows: Rows,
    chain: readonly string[],
    files: SampleFiles,
    idOf: (one: Assigned) => string,
    stated: XmlStatements,
  ) {
    const among = (targets: ReadonlySet<string>) =>
      assigned.filter(({ target, countedFrom }) => targets.has(target) && countedFrom === undefined);
    this.#assigned = assigned;
    this.#chain = chain;
    this.#files = files;
    this.#keyForms = decideKeyForms(among(keyTargets), files, rows, stated);
    this.#velocityForms = decideVelocityForms(among(velocityTargets));
    this.#positionForms = decidePositionForms(among(positionTargets), files, idOf, stated);
    this.#times = among(timeTargets).filter(
      ({ unit, facts }) => unit === undefined && facts.unit === undefined,
    );
    this.added = addedValues(assigned, (one) => nestingOf(one, stated)?.is);
    this.drafts = [...this.#keyForms.drafts, ...this.#velocityForms.drafts, ...this.#positionForms.drafts];
  }

  parametersOf(one: Assigned): Made {
    const { target } = one;
    if (target === 'sample') return { parameters: [parameterAt(one, 'sample', this.#files.form)] };
    if (one.countedFrom)
      return {
        parameters: [
          parameterAt(one, target, {
            kind: 'count',
            from: one.countedFrom,
            ...(one.facts.negative > 0 && { signed: true }),
            ...unitTextOf(one.facts),
          }),
        ],
      };
    if (keyTargets.has(target)) return { parameters: this.#keyParameters(one) };
    if (velocityTargets.has(target))
      return { parameters: [parameterAt(one, target, this.#velocityForms.formOf(one))] };
    if (positionTargets.has(target)) return { parameters: this.#positionParameters(one) };
    const added = this.added.get(one);
    const times = timesOf(one);
    if (times !== undefined)
      return made(one, added ?? (target === 'attenuation' ? 'volume' : target), countedBy(times), 'unit');
    if (timeTargets.has(target)) return made(one, target, decideTimeForm(one, this.#times), 'unit');
    switch (target) {
      case 'volume':
      case 'attenuation':
        return made(one, added ?? 'volume', decideLevelForm(one), 'unit');
      case 'tune':
        return made(one, added ?? 'tune', decideTuningForm(one), 'unit');
      case 'transpose': {
        const form: ValueForm = { kind: 'tuning', unit: 'semitones', ...unitTextOf(one.facts) };
        return { parameters: [parameterAt(one, added ?? 'transpose', form)] };
      }
      case 'pan':
        return one.facts.numeric > 0 || [...one.facts.tally.keys()].some((text) => /\d/.test(text))
          ? made(one, 'pan', decidePanForm(one), 'range')
          : { parameters: [parameterAt(one, 'pan', wordsForm(one, panSide))] };
      default:
        return { parameters: otherParameters(one, this.#assigned, this.#chain) };
    }
  }

  /** A key beside a root key is the range. */
  #keyParameters(one: Assigned): VocabularyParameter[] {
    const hasRoot = this.#assigned.some((other) => other !== one && other.target === 'pitch_keycenter');
    const names = one.target === 'key' && hasRoot ? ['lokey', 'hikey'] : [one.target];
    const keys = names.map((name) => parameterAt(one, name, this.#keyForms.formOf(one)));
    if (one.unit === 'Hz') return this.#frequencyParameters(one, keys);
    // A single key among ranges is the root key too.
    if (one === singleRoots(this.#assigned)) {
      const root = { ...one, part: undefined, between: undefined };
      return [...keys, parameterAt(root, 'pitch_keycenter', this.#keyForms.formOf(one))];
    }
    const untuned = one.target === 'pitch_keycenter' ? [...one.facts.tally.keys()].filter(isUntunedWord) : [];
    if (untuned.length === 0) return keys;
    // What has no pitch of its own sounds the same on all keys.
    const words = Object.fromEntries(untuned.map((word) => [word, '0']));
    return [...keys, parameterAt(one, 'pitch_keytrack', { kind: 'words', words })];
  }

  /** A frequency is the root key, and what it lacks to that the tuning, where no other place gives one. */
  #frequencyParameters(one: Assigned, keys: VocabularyParameter[]): VocabularyParameter[] {
    const isTuned = this.#assigned.some(({ target }) => target === 'tune' || target === 'transpose');
    return isTuned
      ? keys
      : [...keys, parameterAt(one, 'tune', { kind: 'tuning', unit: 'frequency', ...unitTextOf(one.facts) })];
  }

  #positionParameters(one: Assigned): VocabularyParameter[] {
    if (one.target === 'loop_crossfade') return [];
    const position = parameterAt(one, this.#positionForms.parameterOf(one), this.#positionForms.formOf(one));
    const hasWords = one.target === 'loop_start' && one.part === 1;
    return [position, ...(hasWords ? wordedLoops(one, this.#assigned) : [])];
  }
}

/** How many times numbers are as great as those in the parameter's own unit, where no form of levels, tunings or times says so. */
function timesOf({ times, unit, target, facts }: Assigned): number | undefined {
  if (times === undefined && unit === 'millibels')
    return target === 'volume'
      ? 100
      : target === 'attenuation'
        ? facts.negative > 0
          ? 100
          : -100
        : undefined;
  if (times !== undefined || unit !== 'octaves') return times;
  return target === 'tune' ? 1 / 1200 : target === 'transpose' ? 1 / 12 : undefined;
}

function countedBy(times: number): FormReading {
  return {
    form: { kind: 'number', times },
    confidence: 0.95,
    reason: 'The unit beside the number says so.',
    isOpen: false,
    others: [],
  };
}

function made(one: Assigned, parameter: string, reading: FormReading, what: 'unit' | 'range'): Made {
  return { parameters: [parameterAt(one, parameter, reading.form)], reading: { ...reading, what } };
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
  loop_on: 'loop_mode',
  loop_until: 'loop_mode',
  one_shot: 'loop_mode',
  release_switch: 'trigger',
  reverse: 'direction',
  choke: 'group',
  group_name: 'group_label',
};
