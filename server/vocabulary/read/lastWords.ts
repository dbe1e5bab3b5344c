import { plainNumber } from '../../model/instrumentBuilder';
import { readWord } from '../forms/words';
import type { ValueForm } from '../vocabulary';

/** A word and what it stands for. */
export interface MeantWord {
  raw: string;
  /** Empty where it stands for nothing. */
  value: string;
  /** The value as a number; NaN where it is none. */
  number: number;
}

/** Reads words. A target mostly has one of few, so that the text of its last one need not be cut out again. */
export class LastWords {
  readonly #text: string;
  readonly #last: (MeantWord | undefined)[] = [];

  constructor(text: string) {
    this.#text = text;
  }

  /** What a stretch of the text stands for among the words of a target; `undefined` for other words. */
  read(
    target: number,
    form: Extract<ValueForm, { kind: 'words' }>,
    start: number,
    end: number,
  ): MeantWord | undefined {
    const last = this.#last[target];
    if (last?.raw.length === end - start && this.#text.startsWith(last.raw, start)) return last;
    const raw = this.#text.slice(start, end);
    const value = readWord(form, raw);
    if (value === undefined) return undefined;
    const word = { raw, value, number: plainNumber(value) };
    this.#last[target] = word;
    return word;
  }
}
