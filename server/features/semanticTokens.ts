import type { Instrument } from '../model/instrument';
import type { OpcodeFacts } from '../model/opcodes/opcode';

/** What a stretch of text is; the position of a kind is its number in the protocol. */
export const tokenKinds = [
  'header',
  'opcode',
  'number',
  'noteName',
  'option',
  'path',
  'text',
  'variable',
  'comment',
] as const;

export type TokenKind = (typeof tokenKinds)[number];

/** What a token is besides; the position of a mark is its bit in the protocol. */
export const tokenMarks = ['definition', 'v1', 'v2', 'extension', 'otherSpelling'] as const;

export type TokenMark = (typeof tokenMarks)[number];

/** A stretch of the document's text on one line, with its kind and marks as numbers. */
export interface Token {
  start: number;
  end: number;
  kind: number;
  /** A bit for each of {@link tokenMarks}. */
  marks: number;
}

const kindNumber = Object.fromEntries(tokenKinds.map((kind, number) => [kind, number])) as Record<
  TokenKind,
  number
>;
const markBit = Object.fromEntries(tokenMarks.map((mark, bit) => [mark, 1 << bit])) as Record<
  TokenMark,
  number
>;

/**
 * Parameters from which on an instrument is long: then tokens that highlighting by patterns gives as well are left out,
 * since a million numbers on the way to the editor would hold up everything else.
 */
const manyParameters = 20_000;

/** Kinds that highlighting by patterns tells as well. */
const plainKinds: ReadonlySet<number> = new Set(
  (['number', 'path', 'text', 'comment'] as const).map((kind) => kindNumber[kind]),
);

/**
 * The tokens of the document itself that touch a stretch of its text, in the order of the text: headers, names of opcodes
 * with their level, values by what they are, variables and comments. Opcodes that the format does not know have none. Of
 * a long instrument only what highlighting by patterns cannot tell.
 */
export function semanticTokens(
  instrument: Instrument,
  from = 0,
  to = Number.POSITIVE_INFINITY,
): readonly Token[] {
  return new Collector(instrument, from, to).collect();
}

class Collector {
  readonly #instrument: Instrument;
  readonly #text: string;
  readonly #from: number;
  readonly #to: number;
  readonly #isLong: boolean;
  readonly #tokens: Token[] = [];
  /** By the number of a name: marks of the name and the kind of its values; −1 for a name that is not known. */
  readonly #marks: number[] = [];
  readonly #values: number[] = [];

  constructor(instrument: Instrument, from: number, to: number) {
    this.#instrument = instrument;
    this.#text = instrument.sources[0]?.text ?? '';
    this.#from = from;
    this.#to = to;
    this.#isLong = instrument.parameters.count > manyParameters;
  }

  collect(): readonly Token[] {
    const instrument = this.#instrument;
    const { headers } = instrument;
    this.#directives();
    let header = Math.max(0, this.#instrument.headerAt(0, this.#from));
    for (; header < headers.count; header++) {
      const { source, start, end } = this.#instrument.headerSpan(header);
      if (source === 0) {
        if (start > this.#to) break;
        this.#header(start, end);
      }
      this.#parameters(header);
    }
    const tokens = this.#tokens;
    if (!isSorted(tokens)) tokens.sort((a, b) => a.start - b.start);
    return instrument.parameters.translated ? apart(tokens) : tokens;
  }

  #header(start: number, end: number): void {
    // The name alone: signs around it are those of the notation.
    const name = /[^<>/\s]+/.exec(this.#text.slice(start, end));
    if (name) this.#add(start + name.index, start + name.index + name[0].length, kindNumber.header, 0);
  }

  #parameters(header: number): void {
    const instrument = this.#instrument;
    const end = instrument.endParameter(header);
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
      const marks = this.#marksOf(instrument.name(parameter));
      const withVariable = instrument.parameters.values.has(parameter);
      if (this.#isLong && !withVariable && marks === markBit.v1) {
        const kind = this.#valueKind(parameter);
        if (kind < 0 || plainKinds.has(kind)) continue;
      }
      const name = instrument.nameSpan(parameter);
      if (name.source !== 0) continue;
      if (name.start > this.#to) return;
      const value = instrument.valueSpan(parameter);
      if (value.end < this.#from) continue;
      if (withVariable) this.#split(name.start, name.end, marks < 0 ? -1 : kindNumber.opcode, marks);
      else if (marks >= 0) this.#add(name.start, name.end, kindNumber.opcode, marks);
      // A variable that stands for a whole opcode is both name and value.
      if (value.start < name.end) continue;
      const kind = this.#valueKind(parameter);
      if (withVariable) this.#split(value.start, value.end, kind, 0);
      else if (kind >= 0) this.#add(value.start, value.end, kind, 0);
    }
  }

  #marksOf(name: number): number {
    let marks = this.#marks[name];
    if (marks === undefined) {
      const opcode = this.#instrument.names.opcode(name);
      marks = opcode
        ? markBit[opcode.facts.level] | (opcode.spelling === 'alias' ? markBit.otherSpelling : 0)
        : -1;
      this.#marks[name] = marks;
      this.#values[name] = opcode ? valueKindOf(opcode.facts) : -1;
    }
    return marks;
  }

  #valueKind(parameter: number): number {
    const kind = this.#values[this.#instrument.name(parameter)];
    if (kind !== kindNumber.number) return kind;
    if (!Number.isNaN(this.#instrument.number(parameter))) return kind;
    return Number.isNaN(this.#instrument.keyNumber(parameter)) ? -1 : kindNumber.noteName;
  }

  #directives(): void {
    for (const directive of this.#instrument.directives) {
      const { kind, source, start, end, nameStart, nameEnd } = directive;
      if (source !== 0 || end < this.#from || start > this.#to) continue;
      if (kind === 'comment') this.#lines(start, end);
      else if (kind === 'define') this.#add(nameStart, nameEnd, kindNumber.variable, markBit.definition);
      else this.#split(nameStart, nameEnd, kindNumber.path, 0);
    }
  }

  /** A comment, line by line: a token does not go over the end of a line. */
  #lines(start: number, end: number): void {
    for (const line of this.#text.slice(start, end).matchAll(/[^\r\n]+/g)) {
      this.#add(start + line.index, start + line.index + line[0].length, kindNumber.comment, 0);
    }
  }

  /** Text in which variables can stand. */
  #split(start: number, end: number, kind: number, marks: number): void {
    let at = start;
    for (const variable of this.#text.slice(start, end).matchAll(/\$\w+/g)) {
      const from = start + variable.index;
      if (kind >= 0) this.#add(at, from, kind, marks);
      at = from + variable[0].length;
      this.#add(from, at, kindNumber.variable, 0);
    }
    if (kind >= 0) this.#add(at, end, kind, marks);
  }

  #add(start: number, end: number, kind: number, marks: number): void {
    if (end <= start || end < this.#from || start > this.#to) return;
    if (this.#isLong && (plainKinds.has(kind) || (kind === kindNumber.opcode && marks === markBit.v1)))
      return;
    this.#tokens.push({ start, end, kind, marks });
  }
}

function isSorted(tokens: readonly Token[]): boolean {
  for (let at = 1; at < tokens.length; at++) {
    if (tokens[at].start < tokens[at - 1].start) return false;
  }
  return true;
}

/** The kind that the values of an opcode have; numbers can be note names too. */
function valueKindOf({ kind, pattern }: OpcodeFacts): number {
  switch (kind) {
    case 'key':
    case 'whole':
    case 'number':
      return kindNumber.number;
    case 'option':
      return kindNumber.option;
    case 'path':
      return kindNumber.path;
    case 'text':
      return kindNumber.text;
    case 'any':
      return pattern === 'sample' ? kindNumber.path : kindNumber.number;
  }
}

/** Tokens that neither are empty nor share text: in a vocabulary two parameters can stand in one place. */
function apart(tokens: readonly Token[]): Token[] {
  let end = 0;
  return tokens.filter((token) => {
    if (token.start < end || token.end <= token.start) return false;
    end = token.end;
    return true;
  });
}
