import { keyOfNoteName } from '../../model/keys';
import { numberIn } from '../../model/opcodes/values';
import { decimalText } from '../../model/text/decimalText';
import type { ValueForm } from '../vocabulary';
import { readKeyForm, writeKeyForm } from './keys';
import type { NumberForm } from './numberForm';
import { readNumberForm } from './numberForm';
import { numberFormOf } from './numberFormOf';
import { toMillionths } from './numberText';
import { readSamplePath, writeSamplePath } from './samplePath';
import { shortestDecimal } from './shortest';
import type { ValueSurroundings } from './valueSurroundings';
import { readWord, writeWord } from './words';

/** A value in the open SFZ format. */
export interface ReadValue {
  text: string;
  /** The value as a number; NaN for words. */
  number: number;
  /** What had to be assumed, as a sentence. */
  assumed?: string;
}

/** A value in a vocabulary's form. */
export interface WrittenValue {
  text: string;
  /** Where it is not exactly the value: by how much it is off, or what was assumed, as a sentence. */
  approximated?: string;
}

/**
 * The value that a text stands for; `undefined` where it makes no sense in this form. Keys come as numbers, a path with `/`
 * and with what the form puts before and behind it. An empty text is the value of a free text alone.
 */
export function readValue(form: ValueForm, text: string, around: ValueSurroundings): ReadValue | undefined {
  switch (form.kind) {
    case 'text':
      return { text, number: numberIn(text) ?? Number.NaN };
    case 'path':
      return text === '' ? undefined : { text: readSamplePath(form, text), number: Number.NaN };
    case 'words': {
      const value = readWord(form, text);
      return value === undefined ? undefined : { text: value, number: numberIn(value) ?? Number.NaN };
    }
    case 'key': {
      const key = readKeyForm(form, text);
      return key === undefined ? undefined : { text: String(key), number: key };
    }
    default: {
      const numbers = numberFormOf(form, around.parameter);
      const written = readNumberForm(numbers, form.unitText, text);
      const number = numbers.read(written, around);
      if (form.kind === 'number' && written === form.none) return { text: '', number: Number.NaN };
      if (Number.isNaN(number)) return undefined;
      const assumed = numbers.assumed?.(around);
      return { text: decimalText(number), number, ...(assumed !== undefined && { assumed }) };
    }
  }
}

/**
 * How a value of the open SFZ format is written in a form; `undefined` where the form has no place for it. A number is the
 * shortest decimal that reads back to the same value; where none does, the nearest, with how far it is off.
 */
export function writeValue(
  form: ValueForm,
  value: string,
  around: ValueSurroundings,
): WrittenValue | undefined {
  switch (form.kind) {
    case 'text':
      return { text: value };
    case 'path': {
      // Nothing here knows the entries of a list.
      const text = value === '' || form.list ? undefined : writeSamplePath(form, value);
      return text === undefined ? undefined : { text };
    }
    case 'words': {
      const text = writeWord(form, value);
      return text === undefined ? undefined : { text };
    }
    case 'key': {
      const key = numberIn(value.trim()) ?? keyOfNoteName(value.trim());
      if (key === undefined || !Number.isInteger(key) || key < -1 || key > 127) return undefined;
      return { text: writeKeyForm(form, key) };
    }
    default: {
      const number = numberIn(value.trim());
      if (number === undefined) return undefined;
      const numbers = numberFormOf(form, around.parameter);
      const written = writeNumber(numbers, number, around);
      if (!written) return undefined;
      const text = written.text + (form.unitText ?? '');
      return { ...written, text: numbers.writeText?.(text) ?? text };
    }
  }
}

function writeNumber(
  numbers: NumberForm,
  value: number,
  around: ValueSurroundings,
): WrittenValue | undefined {
  const near = numbers.write(value, around);
  if (Number.isNaN(near)) return undefined;
  const exact = shortestDecimal(near, (written) => numbers.read(written, around) === value);
  const assumed = numbers.assumed?.(around);
  if (exact !== undefined) return { text: exact, ...(assumed !== undefined && { approximated: assumed }) };
  const nearest = numbers.read(near, around);
  const text = shortestDecimal(near, (written) => numbers.read(written, around) === nearest);
  if (text === undefined || Number.isNaN(nearest)) return undefined;
  const off = decimalText(toSignificant(Math.abs(nearest - value)));
  const unit = numbers.unit === '' ? '' : ` ${numbers.unit}`;
  const said = `${around.parameter} is ${decimalText(toMillionths(value))} and is written as ${decimalText(nearest)}, ${off}${unit} off.`;
  return { text, approximated: assumed === undefined ? said : `${said} ${assumed}` };
}

function toSignificant(number: number): number {
  return Number(number.toPrecision(2));
}
