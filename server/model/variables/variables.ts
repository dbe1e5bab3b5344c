import { definedVariable } from './variableUses';

/** A `$` with the letters, digits and underscores after it. */
const use = /\$(\w+)/g;

/** A variable that was used and never defined, by its place in the text that was expanded. */
export interface UnknownVariable {
  name: string;
  /** Offset of the `$` in the text that was given. */
  start: number;
  end: number;
}

/**
 * The variables of an instrument. Where the name of one is the beginning of another's, the longest that is defined
 * is taken, which is the safe reading of `$KEYS` when `$KEY` exists too.
 */
export class Variables {
  readonly #values = new Map<string, string>();

  /** Defines a variable, without its `$`; a later definition replaces an earlier one. */
  define(name: string, value: string): void {
    this.#values.set(name, value);
  }

  /** Variables that are the same from here on, and can become others. */
  copy(): Variables {
    const copy = new Variables();
    for (const [name, value] of this.#values) copy.#values.set(name, value);
    return copy;
  }

  /** The value of a variable, without its `$`. */
  value(name: string): string | undefined {
    return this.#values.get(name);
  }

  /** The names that are defined, without `$`. */
  get names(): Iterable<string> {
    return this.#values.keys();
  }

  /** Puts the values of variables into a text; what is not defined stays as it is and is told to `unknown`. */
  expand(text: string, unknown: (variable: UnknownVariable) => void): string {
    return text.replace(use, (whole: string, word: string, start: number) => {
      const name = definedVariable(word, this.#values);
      if (name !== undefined) return (this.#values.get(name) as string) + word.slice(name.length);
      unknown({ name: whole, start, end: start + whole.length });
      return whole;
    });
  }
}
