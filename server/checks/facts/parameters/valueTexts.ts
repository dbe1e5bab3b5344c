import type { Instrument } from '../../../model/instrument';
import { parameterStride } from '../../../model/instrumentParts';

/** Compares values with texts, mostly without cutting them out of the text that they stand in. */
export class ValueTexts {
  readonly #instrument: Instrument;
  readonly #isPlain: boolean;
  readonly #text: string;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    const { sources, parameters } = instrument;
    this.#isPlain = sources.length === 1 && parameters.values.size === 0 && !parameters.translated;
    this.#text = sources[0]?.text ?? '';
  }

  /** Whether the value of a parameter is a text. */
  is(parameter: number, text: string): boolean {
    if (!this.#isPlain) return this.#instrument.valueText(parameter) === text;
    const { cells } = this.#instrument.parameters;
    const start = cells[parameter * parameterStride + 2];
    const end = cells[parameter * parameterStride + 3];
    if (end - start !== text.length) return false;
    // Character by character, as startsWith goes, is slower for long texts.
    return text.length > 16 ? this.#text.slice(start, end) === text : this.#text.startsWith(text, start);
  }
}
