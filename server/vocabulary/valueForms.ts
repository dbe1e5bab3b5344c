import type { ValueForm } from './vocabulary';

/** What a value may depend on beyond its own text. */
export interface ValueSurroundings {
  /** The name of the parameter in the open SFZ format. */
  parameter: string;
  /** Frames a second of the sample; `undefined` where it is not known. */
  sampleRate: number | undefined;
  /** Frames of the sample; `undefined` where it is not known. */
  frames: number | undefined;
  /** The value, in frames, of another parameter of the region, such as `loop_start`; 0 where it is not set. */
  frameOf(parameter: string): number;
}

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

/** The value that a text stands for; `undefined` where it makes no sense in this form. */
export function readValue(
  _form: ValueForm,
  _text: string,
  _around: ValueSurroundings,
): ReadValue | undefined {
  return undefined;
}

/** How a value of the open SFZ format is written in a form; `undefined` where the form has no place for it. */
export function writeValue(
  _form: ValueForm,
  _value: string,
  _around: ValueSurroundings,
): WrittenValue | undefined {
  return undefined;
}
