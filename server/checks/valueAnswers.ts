import type { Instrument } from '../model/instrument';
import { parameterStride } from '../model/instrument';

/**
 * What values say, for checks that ask about the same few words in every region: the word that was asked about last is
 * recognised in the text without cutting it out.
 */
export class ValueAnswers<Answer> {
  readonly #instrument: Instrument;
  readonly #answer: (text: string) => Answer;
  readonly #isPlain: boolean;
  readonly #text: string;
  #last: { text: string; answer: Answer } | undefined;

  /** `answer` is asked once for each stretch of equal values. */
  constructor(instrument: Instrument, answer: (text: string) => Answer) {
    this.#instrument = instrument;
    this.#answer = answer;
    const { sources, parameters } = instrument;
    this.#isPlain = sources.length === 1 && parameters.values.size === 0 && !parameters.translated;
    this.#text = sources[0]?.text ?? '';
  }

  /** The answer to the value of a parameter; `undefined` for −1. */
  of(parameter: number): Answer | undefined {
    if (parameter < 0) return undefined;
    const last = this.#last;
    if (last && this.#isPlain) {
      const { cells } = this.#instrument.parameters;
      const start = cells[parameter * parameterStride + 2] as number;
      const end = cells[parameter * parameterStride + 3] as number;
      if (end - start === last.text.length && this.#text.startsWith(last.text, start)) return last.answer;
    }
    const text = this.#instrument.valueText(parameter);
    if (text === last?.text) return last.answer;
    this.#last = { text, answer: this.#answer(text) };
    return this.#last.answer;
  }
}
