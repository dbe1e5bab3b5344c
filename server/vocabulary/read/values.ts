import { plainNumber } from '../../model/instrumentBuilder';
import { readKeyForm } from '../forms/keys';
import { readNumberForm } from '../forms/numberForm';
import { readSamplePath } from '../forms/samplePath';
import { readWord } from '../forms/words';
import type { ReadTarget } from './targets';

/** What a text stands for, in the terms of the open SFZ format. */
export interface TargetValue {
  number: number;
  /** The value where it is neither the text itself nor {@link number}. */
  text?: string;
  /** Whether the value is the number, not the text. */
  isNumber: boolean;
  /** Whether the number has yet to be scaled by what is around it. */
  isUnscaled?: true;
}

/** The value of a text, which is not empty; `undefined` where it makes no sense. */
export function readTargetText(target: ReadTarget, text: string): TargetValue | undefined {
  const { form, numbers } = target;
  switch (form.kind) {
    case 'text':
      return { number: plainNumber(text), isNumber: false };
    case 'path': {
      const path = readSamplePath(form, text);
      return { number: Number.NaN, isNumber: false, ...(path !== text && { text: path }) };
    }
    case 'words': {
      const value = readWord(form, text);
      if (value === undefined) return undefined;
      return { number: plainNumber(value), isNumber: false, ...(value !== text && { text: value }) };
    }
    case 'key': {
      const key = readKeyForm(form, text);
      return key === undefined ? undefined : { number: key, isNumber: String(key) !== text };
    }
    default: {
      if (!numbers) return undefined;
      const number = readNumberForm(numbers, form.unitText, text);
      if ((form.kind === 'number' || form.kind === 'position') && number === form.none)
        return { number: Number.NaN, text: '', isNumber: false };
      if (numbers.needsSurroundings) {
        const isSense = number >= 0 || (form.kind === 'count' && form.signed === true);
        return isSense ? { number, isNumber: true, isUnscaled: true } : undefined;
      }
      const value = target.readNumber?.(number) ?? Number.NaN;
      return Number.isNaN(value) ? undefined : { number: value, isNumber: plainNumber(text) !== value };
    }
  }
}
