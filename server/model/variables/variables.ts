import type { Finding } from '../finding';
import type { InSomeFile } from '../text/span';
import { definedVariable } from './variableUses';

/** A `$` with the letters, digits and underscores after it. */
const use = /\$(\w+)/g;

/**
 * Characters that a text can have with variables put in, and that all texts of an instrument can have got by that: variables
 * that stand for one another twice each double in length with every line.
 */
const mostCharacters = 65_536;
const mostAdded = 32 * 1024 * 1024;

/** A variable that was not put in, by its place in the text that was expanded: it was never defined, or it is too long. */
export interface OddVariable {
  name: string;
  problem: 'unknown' | 'too-long';
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
  #under: Variables | undefined;
  #added = 0;

  /** Defines a variable, without its `$`; a later definition replaces an earlier one. */
  define(name: string, value: string): void {
    this.#values.set(name, value);
  }

  /** Variables that are the same now and can be set to others without changing these. */
  layer(): Variables {
    const layer = new Variables();
    layer.#under = this;
    return layer;
  }

  /** Sets the variables that this is a layer of to what it has. */
  keep(): void {
    for (const [name, value] of this.#values) this.#under?.define(name, value);
  }

  /** The value of a variable, without its `$`. */
  value(name: string): string | undefined {
    return this.#values.get(name) ?? this.#under?.value(name);
  }

  /** Whether a variable, without its `$`, is defined. */
  has(name: string): boolean {
    return this.#values.has(name) || (this.#under?.has(name) ?? false);
  }

  /** Whether no name is defined. */
  get isEmpty(): boolean {
    return this.#values.size === 0;
  }

  /** The names that are defined, without `$`. */
  get names(): Iterable<string> {
    return this.#values.keys();
  }

  /** Puts the values of variables into a text; what is not defined, or too long, stays as it is and is told to `odd`. */
  expand(text: string, odd: (variable: OddVariable) => void): string {
    let { length } = text;
    const expanded = text.replace(use, (whole: string, word: string, start: number) => {
      const name = definedVariable(word, this);
      const end = start + whole.length;
      if (name === undefined) {
        odd({ name: whole, problem: 'unknown', start, end });
        return whole;
      }
      const value = this.value(name) as string;
      length += value.length - name.length - 1;
      if (length <= mostCharacters && this.#added + length - text.length <= mostAdded)
        return value + word.slice(name.length);
      length -= value.length - name.length - 1;
      odd({ name: `$${name}`, problem: 'too-long', start, end: start + name.length + 1 });
      return whole;
    });
    this.#added += Math.max(0, length - text.length);
    return expanded;
  }
}

/** A finding of a variable that was not put in, in the offsets of the text that was expanded. `define` writes a definition. */
export function oddVariableFinding(
  { name, problem, start, end }: OddVariable,
  define: string,
): InSomeFile<Finding> {
  if (problem === 'unknown')
    return {
      code: 'define-unknown',
      severity: 'warning',
      start,
      end,
      message: `${name} is not defined before this place. Write ${define} above it, or correct the name.`,
    };
  return {
    code: 'syntax-error',
    severity: 'error',
    start,
    end,
    message: `With the value of ${name} this would be longer than any value can be, so it is left as it is. Check how ${name} is defined.`,
  };
}
