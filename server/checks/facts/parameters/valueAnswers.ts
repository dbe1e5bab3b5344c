import type { Instrument } from '../../../model/instrument';
import { ValueTexts } from './valueTexts';

/**
 * What values say, for checks that ask about the same few words in every region: the word that was asked about last is
 * recognised in the text without cutting it out.
 */
export class ValueAnswers<Answer> {
  readonly #instrument: Instrument;
  readonly #answer: (text: string) => Answer;
  readonly #values: ValueTexts;
  #last: { text: string; answer: Answer } | undefined;

  /** `answer` is asked once for each stretch of equal values. */
  constructor(instrument: Instrument, answer: (text: string) => Answer) {
    this.#instrument = instrument;
    this.#answer = answer;
    this.#values = new ValueTexts(instrument);
  }

  /** The answer to the value of a parameter; `undefined` for −1. */
  of(parameter: number): Answer | undefined {
    if (parameter < 0) return undefined;
    const last = this.#last;
    if (last && this.#values.is(parameter, last.text)) return last.answer;
    const text = this.#instrument.valueText(parameter);
    this.#last = { text, answer: this.#answer(text) };
    return this.#last.answer;
  }
}
