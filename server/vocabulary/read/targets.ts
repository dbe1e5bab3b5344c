import { keyOfNumber, nearestKey } from '../forms/keys';
import type { NumberForm } from '../forms/numberForm';
import { numberFormOf } from '../forms/numberFormOf';
import { splitRange } from '../forms/rangeText';
import { readValue } from '../forms/valueForms';
import type { ValueSurroundings } from '../forms/valueSurroundings';
import { isStandIn } from '../places';
import type { ListPlace, ValueForm, Vocabulary, VocabularyParameter } from '../vocabulary';

/** A parameter that a place of the text gives a value. */
export interface ReadTarget {
  /** Its position in {@link targetsOf}. */
  index: number;
  /** The position of its level. */
  level: number;
  parameter: string;
  form: ValueForm;
  part: 0 | 1 | 2;
  between: string;
  /** The other part of the range, where there is one. */
  partner: ValueForm | undefined;
  /** Forms of other kinds that the same place has: one of them is enough to make sense of a text. */
  besides: readonly VocabularyParameter[];
  /** How its numbers are read, where it is one that is scaled. */
  numbers: NumberForm | undefined;
  /** The value of a written number, NaN where it makes no sense; missing where it goes by more than the number. */
  readNumber: ((written: number) => number) | undefined;
  /** Whether the text may say something else than the number it looks like. */
  goesByText: boolean;
  /** For a position in a round robin: the parameter for the number of turns, where no place gives that. */
  turns?: ReadTarget;
  /** A parameter with its value that follows from this one being set, where no place gives it. */
  implied?: { target: ReadTarget; value: string };
  /** Where the text is the key of an entry: the list that has the value. */
  listed?: ListPlace;
  /** Whether it counts only where its element says nothing else. */
  isStandIn?: true;
  /** Whether it names the folder of paths further in, and sets nothing itself. */
  isFolder?: true;
  /** Which of several places of folders it is. */
  folderPlace?: number;
  /** Whether it states the sample rate of what stands in the element, and sets nothing itself. */
  isRate?: true;
}

/** All parameters of a vocabulary, level by level. */
export function targetsOf({ levels }: Vocabulary): ReadTarget[][] {
  let index = 0;
  return levels.map(({ parameters }, level) =>
    parameters.map((one) => {
      const { parameter, form, part = 0, between = '-' } = one;
      const partner = part === 0 ? undefined : partnerOf(one, parameters);
      const numbers = numbersOf(form, parameter);
      const readNumber = numberReader(form, parameter, numbers);
      const isOther = (other: VocabularyParameter) =>
        other.form.kind !== form.kind || (other.part === undefined) !== (part === 0);
      const besides = parameters.filter((other) => isSamePlace(other, one) && isOther(other));
      return {
        index: index++,
        level,
        parameter,
        form,
        part,
        between,
        partner,
        besides,
        numbers,
        readNumber,
        goesByText: mayMislead(form),
        ...(one.listed && { listed: one.listed }),
        ...(isStandIn(one, parameters) && { isStandIn: true }),
      };
    }),
  );
}

/** A parameter that the reader sets by itself; `index` is its position among all targets. */
export function ownTarget(parameter: string, level: number, index: number): ReadTarget {
  return {
    index,
    level,
    parameter,
    form: { kind: 'text' },
    part: 0,
    between: '-',
    partner: undefined,
    besides: [],
    numbers: undefined,
    readNumber: undefined,
    goesByText: true,
  };
}

/** A number that sets nothing is no value, and a mark between thousands looks like a decimal point. */
function mayMislead(form: ValueForm): boolean {
  return form.kind === 'number'
    ? form.none !== undefined
    : form.kind === 'position' && (form.thousands !== undefined || form.none !== undefined);
}

function partnerOf(one: VocabularyParameter, all: readonly VocabularyParameter[]): ValueForm | undefined {
  const isPartner = ({ part }: VocabularyParameter) => part !== undefined && part !== one.part;
  return all.find((other) => isSamePlace(other, one) && isPartner(other))?.form;
}

/** Whether two parameters are read from one text: of an element itself, or of the entry that it refers to. */
function isSamePlace(one: VocabularyParameter, other: VocabularyParameter): boolean {
  const [listed, place] = [one.listed, other.listed];
  return one.at === other.at && listed?.element === place?.element && listed?.at === place?.at;
}

function numbersOf(form: ValueForm, parameter: string): NumberForm | undefined {
  switch (form.kind) {
    case 'key':
    case 'words':
    case 'path':
    case 'text':
      return undefined;
    default:
      return numberFormOf(form, parameter);
  }
}

function numberReader(
  form: ValueForm,
  parameter: string,
  numbers: NumberForm | undefined,
): ((written: number) => number) | undefined {
  if (form.kind === 'key') {
    const { offset = 0 } = form;
    if (form.written === 'frequency') return (written) => nearestKey(written) ?? Number.NaN;
    return (written) => keyOfNumber(written, offset) ?? Number.NaN;
  }
  if (!numbers || numbers.needsSurroundings) return undefined;
  const around = unknownSurroundings(parameter);
  return (written) => numbers.read(written, around);
}

/** Where, within a text that holds a range, the value of a parameter stands; the whole where it holds none. */
export function partOf(target: ReadTarget, text: string): { start: number; end: number } | undefined {
  if (target.part === 0) return { start: 0, end: text.length };
  const parts = splitRange(text, target.between, (part, which) => {
    const form = which === target.part ? target.form : (target.partner ?? target.form);
    return readValue(form, part, unknownSurroundings(target.parameter)) !== undefined;
  });
  return parts && (target.part === 1 ? parts.first : parts.second);
}

/** Whether another parameter of the place makes sense of a text. */
export function isReadBeside({ besides }: ReadTarget, text: string): boolean {
  return besides.some(({ parameter, form, part, between = '-' }) => {
    const accepts = (one: string) => readValue(form, one, unknownSurroundings(parameter)) !== undefined;
    return part === undefined ? accepts(text) : splitRange(text, between, accepts) !== undefined;
  });
}

/** For values that go by nothing around them. */
function unknownSurroundings(parameter: string): ValueSurroundings {
  return { parameter, sampleRate: undefined, frames: undefined, frameOf: () => 0 };
}
