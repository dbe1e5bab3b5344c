import { byCount } from '../../../model/wording/counted';
import { levelScalePhrases } from '../../../trade/scales/levelScale';
import type { ValueForm, VocabularyParameter } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Alternative, Draft } from '../draft';
import { firstValueOf, parameterAt, wordedPlace } from '../draft';
import { noneOfThese } from '../otherReadings';
import { saysSo } from '../saysSo';
import { keyTargets, velocityTargets } from '../values/plausible';
import { parameterWords } from '../words/parameterWords';
import type { FormReading } from './soundForms';

/** Says in which form a parameter is written. */
export function formDraft(id: string, one: Assigned, parameter: string, reading: FormReading): Draft {
  const { at, part } = parameterAt(one, parameter, reading.form);
  const what = parameterWords[parameter] ?? parameter;
  return {
    id,
    message: reading.isLeft
      ? `${wordedPlace(one)} is ${what}, but its numbers could be several things. They are left out, so that none is too loud. Write the unit behind each number, as in "3 dB".`
      : `${wordedPlace(one)} is ${what} ${formWords(reading.form)}.`,
    confidence: reading.isLeft ? Math.min(reading.confidence, 0.6) : reading.confidence,
    ...(reading.isOpen && { isGuess: true }),
    ...(reading.isLeft && { isLeft: true, isLost: true }),
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

/** What the number at a place is that becomes the end of what it is the length of. */
const lengthWords: Readonly<Record<string, string>> = {
  loop_length: 'the length of the loop',
  sample_length: 'the length of what is played',
};

/** Says which parameters a place gives. */
export function placeDraft(
  id: string,
  one: Assigned,
  parameters: readonly VocabularyParameter[],
  chain: readonly string[],
): Draft {
  const names = parameters.map(
    ({ parameter }) => lengthWords[one.target] ?? parameterWords[parameter] ?? parameter,
  );
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
    message: `${part}${wordedPlace(one)} of ${where} is ${names.join(' and ')}.`,
    confidence: one.weight,
    evidence: [
      one.evidence ??
        `${one.weight >= 0.75 ? 'Its name says so' : 'Its name could mean that'}, and ${byCount(one.facts.filled, 'its value fits', 'its values fit')}.`,
    ],
    span: firstValueOf(one),
    isAbout,
    alternatives: [
      ...one.others
        .filter((target) => simpleTargets.has(target) && target !== one.target)
        .map(
          (target): Alternative => ({
            label: `it is ${parameterWords[target] ?? target}`,
            change: (old) =>
              old.parameter === first.parameter
                ? { ...old, parameter: target, form: formLike(target, old.form) }
                : old,
          }),
        ),
      { label: noneOfThese, change: () => undefined },
    ],
  };
}

/** Whether a value of an outer element is added to those of the regions, or stands for regions without one. */
export function addedDraft(
  id: string,
  one: Assigned,
  name: string,
  chain: readonly string[],
  stated?: string,
): Draft {
  const element = chain[one.column.level];
  const inherited = one.target === 'attenuation' ? 'volume' : one.target;
  return {
    id: `${id}.adds`,
    message: `${wordedOuter(one, element)} is added to ${parameterWords[inherited] ?? inherited} of each region ${one.column.listed ? 'that refers to it' : 'inside'}.`,
    confidence: stated === undefined ? 0.65 : 0.95,
    evidence: [
      stated === undefined
        ? `Regions ${one.column.listed ? 'that refer to it' : 'inside'} have one of their own, which would otherwise take its place.`
        : saysSo(stated),
    ],
    span: firstValueOf(one),
    isAbout: (other, about) =>
      other.parameter === name && other.at === one.column.at && about === element && isSameEntry(other, one),
    alternatives: [
      {
        label: 'it counts only where a region has none',
        change: (old) => ({ ...old, parameter: inherited }),
      },
    ],
  };
}

/** A place with the element that it stands in: one around regions, or the entry of a list. */
function wordedOuter(one: Assigned, element: string): string {
  const { listed } = one.column;
  return listed
    ? `"${listed.at.replace(/^@/, '')}" of <${listed.element}>`
    : `${wordedPlace(one)} of <${element}>`;
}

function isSameEntry({ listed }: VocabularyParameter, { column }: Assigned): boolean {
  return listed?.element === column.listed?.element && listed?.at === column.listed?.at;
}

/** That a value of an outer element gives way to those of regions that have one; `added`: a text that says otherwise. */
export function overriddenDraft(
  id: string,
  one: Assigned,
  { parameter, at }: VocabularyParameter,
  chain: readonly string[],
  added?: string,
): Draft {
  const element = chain[one.column.level];
  const header = one.column.level === 0 ? 'global' : 'group';
  return {
    id: `${id}.adds`,
    message: `${wordedOuter(one, element)} is ${parameterWords[parameter] ?? parameter} of each region ${one.column.listed ? 'that refers to it and' : 'inside that'} gives none itself.`,
    confidence: 0.8,
    isGuess: true,
    evidence: [
      added === undefined
        ? 'Some have one, and nothing says that both are added.'
        : `The text says that both are added, "${added}", for which the open SFZ format has no parameter.`,
    ],
    span: firstValueOf(one),
    isAbout: (other, about) =>
      other.parameter === parameter && other.at === at && about === element && isSameEntry(other, one),
    alternatives:
      added === undefined
        ? [
            {
              label: 'it is added to theirs',
              change: (old) => ({
                ...old,
                parameter: `${header}_${parameter === 'transpose' ? 'tune' : parameter}`,
              }),
            },
          ]
        : [],
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
