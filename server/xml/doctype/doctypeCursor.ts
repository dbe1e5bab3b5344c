import type { Stretch } from '../../model/text/stretch';
import { isNameCharacter, nameEndAt, spaceEndAt } from '../scan/characters';

/** What is wrong with a declaration, and where. */
export interface DoctypeFault {
  start: number;
  end: number;
  message: string;
}

/**
 * Goes through the text of a document type declaration. What is not as it should be makes the first fault, which stays
 * until it is taken; the methods then answer false or `undefined`.
 */
export class DoctypeCursor {
  readonly text: string;
  at: number;
  #fault: DoctypeFault | undefined;

  constructor(text: string, at: number) {
    this.text = text;
    this.at = at;
  }

  get done(): boolean {
    return this.at >= this.text.length;
  }

  /** The fault since the last call. */
  takeFault(): DoctypeFault | undefined {
    const fault = this.#fault;
    this.#fault = undefined;
    return fault;
  }

  /** Notes a fault, one character from here on unless a span is given. */
  fail(message: string, start = this.at, end = Math.min(start + 1, this.text.length)): false {
    this.#fault ??= { start, end, message };
    return false;
  }

  /** Passes over white space; whether there was any. */
  space(): boolean {
    const from = this.at;
    this.at = spaceEndAt(this.text, from);
    return this.at > from;
  }

  /** Passes over white space, which has to stand before `what`. */
  needSpace(what: string): boolean {
    return this.space() || this.fail(`A space is missing before ${what}.`);
  }

  /** Passes over a text if it stands here. */
  take(text: string): boolean {
    if (!this.text.startsWith(text, this.at)) return false;
    this.at += text.length;
    return true;
  }

  /** The word of letters that stands here, without passing over it. */
  peekWord(): string {
    const { text, at } = this;
    let end = at;
    while (end < at + 12 && /[A-Za-z]/.test(text.charAt(end))) end++;
    return text.slice(at, end);
  }

  /** Passes over a name, which has to stand here. */
  name(what: string): string | undefined {
    const { text, at } = this;
    const end = nameEndAt(text, at);
    if (end === at) {
      this.fail(`${what} is missing here.`);
      return undefined;
    }
    this.at = end;
    return text.slice(at, end);
  }

  /** Passes over a name token, production [7], which has to stand here. */
  nameToken(what: string): boolean {
    const { text } = this;
    const from = this.at;
    for (;;) {
      const code = text.codePointAt(this.at);
      if (code === undefined || !isNameCharacter(code)) break;
      this.at += code > 0xffff ? 2 : 1;
    }
    return this.at > from || this.fail(`${what} is missing here.`);
  }

  /** Passes over a text in quotes, which has to stand here; answers the span between them. */
  literal(what: string): Stretch | undefined {
    const { text, at } = this;
    const quote = text[at];
    if (quote !== '"' && quote !== "'") {
      this.fail(`${what} is missing here, in quotes.`);
      return undefined;
    }
    const end = text.indexOf(quote, at + 1);
    if (end < 0) {
      this.fail('This quote is not closed.');
      return undefined;
    }
    this.at = end + 1;
    return { start: at + 1, end };
  }

  /** Passes over the `>` that ends a declaration, with white space before it. */
  close(): boolean {
    this.space();
    return this.take('>') || this.fail('A ">" is missing here: the declaration ends before this.');
  }
}
