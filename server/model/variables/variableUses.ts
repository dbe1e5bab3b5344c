import type { Instrument } from '../instrument';
import type { Directive } from '../instrumentParts';
import { directiveName } from '../instrumentParts';
import type { Span } from '../text/span';
import { spanIn } from '../text/span';

/** A place where a variable is defined or used, in the order in which the text is read. */
export interface VariablePlace extends Span {
  kind: 'define' | 'use';
  /** The variable's name without `$`; for a use of one that is not defined, the whole word. */
  name: string;
  /** Letters behind the name that a use is written together with, as the `S` of `$KEYS` where only `$KEY` is defined. */
  rest: string;
  /** Whether the variable is defined here or before. */
  isDefined: boolean;
}

/** A longer name than this is found as a whole word only, as trying each beginning of a very long one would never end. */
export const longestBeginning = 255;

/**
 * The variable that a word behind a `$` begins with: the longest that is defined, which is the safe reading of `$KEYS`
 * when `$KEY` exists too; `undefined` where none is.
 */
export function definedVariable(word: string, defined: { has(name: string): boolean }): string | undefined {
  if (defined.has(word)) return word;
  for (let length = Math.min(word.length - 1, longestBeginning); length > 0; length--) {
    const name = word.slice(0, length);
    if (defined.has(name)) return name;
  }
  return undefined;
}

const known = new WeakMap<Instrument, readonly VariablePlace[]>();

/**
 * Where variables are defined and used in an instrument, all its files included, in the order in which they are read.
 * A file that is included twice appears twice. Worked out once for an instrument, when first asked.
 */
export function variablePlaces(instrument: Instrument): readonly VariablePlace[] {
  let places = known.get(instrument);
  if (!places) {
    places = new Walk(instrument).places();
    known.set(instrument, places);
  }
  return places;
}

class Walk {
  readonly #instrument: Instrument;
  readonly #defined = new Set<string>();
  readonly #places: VariablePlace[] = [];

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
  }

  places(): VariablePlace[] {
    const { directives, parameters } = this.#instrument;
    // A value with a variable always differs from the text at its span, or was put down as if it did.
    const changed = [...parameters.values.keys()].sort((a, b) => a - b);
    let next = 0;
    for (const directive of directives) {
      if (directive.kind === 'comment') continue;
      for (; next < changed.length && changed[next] < directive.parametersBefore; next++)
        this.#parameter(changed[next]);
      this.#directive(directive);
    }
    for (; next < changed.length; next++) this.#parameter(changed[next]);
    return this.#places;
  }

  #parameter(parameter: number): void {
    const name = this.#instrument.nameSpan(parameter);
    const value = this.#instrument.valueSpan(parameter);
    this.#uses(name);
    // A variable that stands for a whole opcode is its name and its value in one.
    if (value.start >= name.end) this.#uses(value);
  }

  #directive(directive: Directive): void {
    const { kind, source, start, end, name, nameStart, nameEnd } = directive;
    if (kind === 'include') {
      this.#uses(directiveName(directive));
      return;
    }
    this.#uses(spanIn(source, start, nameStart));
    this.#uses(spanIn(source, nameEnd, end));
    const word = name.slice(1);
    this.#defined.add(word);
    this.#places.push({
      kind: 'define',
      ...directiveName(directive),
      name: word,
      rest: '',
      isDefined: true,
    });
  }

  #uses({ source, start, end }: Span): void {
    const text = this.#instrument.sources[source]?.text.slice(start, end) ?? '';
    if (!text.includes('$')) return;
    for (const { 0: whole, 1: word = '', index } of text.matchAll(/\$(\w+)/g)) {
      const name = definedVariable(word, this.#defined);
      const at = start + index;
      this.#places.push({
        kind: 'use',
        ...spanIn(source, at, at + 1 + (name ?? word).length),
        name: name ?? word,
        rest: name === undefined ? '' : whole.slice(1 + name.length),
        isDefined: name !== undefined,
      });
    }
  }
}
