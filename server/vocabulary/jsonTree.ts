/** A value of a JSON text with the place where it stands. */
export type JsonNode = { start: number; end: number } & (
  | { kind: 'object'; members: JsonMember[] }
  | { kind: 'array'; items: JsonNode[] }
  | { kind: 'string'; value: string }
  | { kind: 'number'; value: number }
  | { kind: 'boolean'; value: boolean }
  | { kind: 'null' }
);

export interface JsonMember {
  name: string;
  nameStart: number;
  nameEnd: number;
  value: JsonNode;
}

/** Something that a JSON text has wrong. */
export interface JsonProblem {
  message: string;
  start: number;
  end: number;
}

/** Deeper than any text that means something here; keeps hostile ones from exhausting the stack. */
const deepest = 100;

/** Reads JSON (RFC 8259), a byte order mark before it allowed; the first fault ends the reading. Never throws. */
export function readJson(text: string): { root?: JsonNode; problem?: JsonProblem } {
  return new JsonReader(text).read();
}

class Fault extends Error {
  constructor(
    message: string,
    readonly start: number,
    readonly end: number,
  ) {
    super(message);
  }
}

const number = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const word = /[\w$]+/y;
const space = /[ \t\r\n]*/y;
const escapeSequence = /\\(?:["\\/bfnrt]|u[\da-fA-F]{4})/y;

class JsonReader {
  readonly #text: string;
  #at: number;

  constructor(text: string) {
    this.#text = text;
    this.#at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  }

  read(): { root?: JsonNode; problem?: JsonProblem } {
    try {
      const root = this.#value(0);
      this.#space();
      if (this.#at < this.#text.length) this.#fail('Nothing can stand after the last bracket. Remove it.');
      return { root };
    } catch (fault) {
      if (!(fault instanceof Fault)) throw fault;
      return { problem: { message: fault.message, start: fault.start, end: fault.end } };
    }
  }

  #value(depth: number): JsonNode {
    this.#space();
    const start = this.#at;
    if (depth > deepest) this.#fail('Brackets are nested too deep.');
    switch (this.#text[start]) {
      case '{':
        return this.#object(start, depth);
      case '[':
        return this.#array(start, depth);
      case '"':
        return { kind: 'string', value: this.#string(), start, end: this.#at };
    }
    const digits = this.#match(number);
    if (digits !== undefined) return { kind: 'number', value: Number(digits), start, end: this.#at };
    switch (this.#match(word)) {
      case 'true':
        return { kind: 'boolean', value: true, start, end: this.#at };
      case 'false':
        return { kind: 'boolean', value: false, start, end: this.#at };
      case 'null':
        return { kind: 'null', start, end: this.#at };
    }
    const end = this.#at;
    this.#at = start;
    return this.#fail(
      'A value is missing here: a text in double quotes, a number, true, false, { or [.',
      end,
    );
  }

  #object(start: number, depth: number): JsonNode {
    const members: JsonMember[] = [];
    this.#at++;
    if (!this.#eat('}')) {
      do {
        this.#space();
        const nameStart = this.#at;
        if (this.#text[nameStart] !== '"') this.#fail('A name in double quotes is missing here.');
        const name = this.#string();
        const nameEnd = this.#at;
        if (!this.#eat(':')) this.#fail('A ":" is missing after the name.');
        members.push({ name, nameStart, nameEnd, value: this.#value(depth + 1) });
      } while (this.#eat(','));
      if (!this.#eat('}')) this.#fail('A "," or "}" is missing here.');
    }
    return { kind: 'object', members, start, end: this.#at };
  }

  #array(start: number, depth: number): JsonNode {
    const items: JsonNode[] = [];
    this.#at++;
    if (!this.#eat(']')) {
      do items.push(this.#value(depth + 1));
      while (this.#eat(','));
      if (!this.#eat(']')) this.#fail('A "," or "]" is missing here.');
    }
    return { kind: 'array', items, start, end: this.#at };
  }

  #string(): string {
    const text = this.#text;
    const start = this.#at;
    for (let at = start + 1; at < text.length && text.charCodeAt(at) >= 32; at++) {
      if (text[at] === '"') {
        this.#at = at + 1;
        return JSON.parse(text.slice(start, at + 1)) as string;
      }
      if (text[at] !== '\\') continue;
      escapeSequence.lastIndex = at;
      const escaped = escapeSequence.exec(text)?.[0];
      if (escaped === undefined) {
        this.#at = at;
        return this.#fail(
          '"\\" stands before one of " \\ / b f n r t or u with four digits. Write \\\\ for "\\" itself.',
        );
      }
      at += escaped.length - 1;
    }
    const lineEnd = /[\r\n]|$/.exec(text.slice(start))?.index ?? 1;
    return this.#fail('This text has no double quote at its end.', start + lineEnd);
  }

  #space(): void {
    this.#match(space);
  }

  #eat(mark: string): boolean {
    this.#space();
    if (this.#text[this.#at] !== mark) return false;
    this.#at++;
    return true;
  }

  #match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.#at;
    const found = pattern.exec(this.#text)?.[0];
    if (found !== undefined) this.#at += found.length;
    return found;
  }

  #fail(message: string, end = Math.min(this.#text.length, this.#at + 1)): never {
    throw new Fault(message, this.#at, end);
  }
}
