import type { Unit } from '../../trade/meaning';
import { middleCIn, middleKeyIn } from '../../trade/statements/keys/statedOctave';
import { statementsIn } from '../../trade/statements/statements';
import { isBaseName } from '../infer/words/baseWords';
import { nameWords } from '../infer/words/nameWords';
import type { ValueForm, Vocabulary } from '../vocabulary';

/** Units that texts name, as the forms of values have them. */
const unitsOfForms: Readonly<Partial<Record<Unit, string>>> = {
  linear: 'factor',
  s: 'seconds',
  ms: 'milliseconds',
};
/** Longer texts say more than how one kind of values counts. */
const longest = 120;

/**
 * Whether a place explains how values are written, as a vocabulary reads them: `middle-c="60"`, `octave="middle C is C3"`,
 * `levels="dB"`. It sets nothing, and is understood all the same. The name is that of the attribute, or of the element for its text;
 * `element` is the one that has the attribute.
 */
export function formsExplainedIn(
  vocabulary: Vocabulary,
): (name: string, value: string, element?: string) => boolean {
  const all = vocabulary.levels.flatMap(({ parameters }) => parameters.map(({ form }) => form));
  const forms = all.flatMap((form) => (form.kind === 'key' ? [form] : []));
  const isOfNumbers =
    forms.length > 0 && forms.every(({ written, offset = 0 }) => written !== 'name' && offset === 0);
  return (name, value, element) => {
    const words = nameWords(name);
    // Keys may be counted from one that is named so.
    if (isBaseName(words) && forms.some(({ offset = 0 }) => offset < 0 && Number(value) === 0 - offset))
      return true;
    if ((vocabulary.takes ?? []).some(({ upTo }) => upTo && areLimits(value, upTo))) return true;
    const said = [...words, value].join(' ');
    const middleC = middleCIn(said);
    if (middleC !== undefined)
      return forms.some((form) => form.written === 'name' && (form.middleC ?? 'C4') === middleC);
    const key = middleKeyIn(said);
    if (key !== undefined) return forms.some(({ offset = 0 }) => key - 60 === offset);
    if (isOfNumbers && isMidiKeys(said)) return true;
    if (value.length > longest || !/\p{L}|\d/u.test(value)) return false;
    return isOfScale(
      [said, ...(element === undefined ? [] : [`${nameWords(element).join(' ')} ${said}`])],
      all,
    );
  };
}

/** Whether a list gives the ends or the starts of layers up to such velocities, the outermost one perhaps left out. */
function areLimits(value: string, upTo: readonly number[]): boolean {
  if (value.length > longest || !/^[\d\s,;|/]+$/.test(value)) return false;
  const numbers = value.match(/\d+/g)?.map(Number) ?? [];
  if (numbers.length < Math.max(2, upTo.length - 1) || numbers.length > upTo.length) return false;
  const are = (ends: (number: number) => boolean) => numbers.every(ends);
  return are((one) => upTo.includes(one)) || are((one) => one <= 1 || upTo.includes(one - 1));
}

/** Whether words say that keys are numbers of MIDI, as they are where nothing is said. */
function isMidiKeys(said: string): boolean {
  return /(?<!\p{L})(?:keys?|notes?)(?!\p{L})/iu.test(said) && /^\D*midi\D*$/iu.test(said);
}

/** Whether a text gives a unit or the ends of a scale, and values are read so. */
function isOfScale(said: readonly string[], forms: readonly ValueForm[]): boolean {
  return said.some((text) => {
    const { scales, ends } = statementsIn([text]);
    const isEnd =
      ends !== undefined &&
      forms.some(
        (form) =>
          form.kind === 'position' &&
          (form.last ?? 'included') === (ends.are === 'behind' ? 'excluded' : 'included'),
      );
    return (
      isEnd ||
      [...scales.values()].some(({ unit, low, high }) =>
        forms.some((form) => isInUnit(form, unit) || isBetween(form, low, high)),
      )
    );
  });
}

function isInUnit(form: ValueForm, unit: Unit | undefined): boolean {
  if (unit === undefined || !('unit' in form)) return false;
  return form.unit === (unitsOfForms[unit] ?? unit);
}

function isBetween(form: ValueForm, low: number | undefined, high: number | undefined): boolean {
  if (form.kind === 'pan') return Math.abs(form.left) === Math.abs(low ?? Number.NaN) && form.right === high;
  if (form.kind === 'velocity') return form.most === high;
  const full = { percent: 100, sevenBits: 127, eightBits: 255, factor: 1 };
  return (
    form.kind === 'level' &&
    low === 0 &&
    Object.entries(full).some(([unit, most]) => unit === form.unit && most === high)
  );
}
