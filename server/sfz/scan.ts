import { withTextBytes } from '../model/text/textBytes';
import type { SfzHandler } from './handler';
import {
  carriageReturn,
  dollar,
  equals,
  greater,
  hash,
  isBlankCode,
  isCommentMark,
  isLineEnd,
  isMark,
  isNamePart,
  less,
  lineFeed,
  minus,
  nine,
  plus,
  point,
  quote,
  slash,
  space,
  tab,
  zero,
} from './scanCodes';

/**
 * Reads SFZ text from start to end in one pass and tells the handler what stands there. Never throws, never goes
 * back further than one word. The rules are those of the public documentation of the open SFZ format: a value ends
 * at the line's end, or before white space that `opcode=`, a header or a directive follows, or before a comment.
 */
export function scanSfz(text: string, handler: SfzHandler): void {
  withTextBytes(text, lineFeed, (bytes) => {
    const scanner = new SfzScanner(text, bytes, handler);
    while (!scanner.isAtEnd) scanner.scanOn(text.length);
  });
}

/**
 * As {@link scanSfz}, a stretch at a time, for a caller that has the bytes of the text, with a line feed behind them; see
 * `withTextBytes`. One class of more than 400 lines for speed: its steps share where they are in the text without making anything.
 */
export class SfzScanner {
  readonly #text: string;
  /** With a line feed behind the text, so that looking one further needs no check. */
  readonly #codes: Uint8Array;
  readonly #handler: SfzHandler;

  // The opcode whose value is to be read next: its name was read on the way to the end of the value before it.
  // The start of the name is −1 where no opcode follows directly.
  #nameStart = -1;
  #nameEnd = 0;
  #nameHash = 0;
  #nameHasVariable = false;

  // Further results of #scanValue, kept here instead of in an object for each value.
  #valueStop = 0;
  #valueHasVariable = false;
  #valueHasEquals = false;

  /** Where reading goes on. */
  #at: number;

  constructor(text: string, codes: Uint8Array, handler: SfzHandler) {
    this.#text = text;
    this.#codes = codes;
    this.#handler = handler;
    this.#at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  }

  get isAtEnd(): boolean {
    return this.#at >= this.#text.length;
  }

  /** Reads about so many characters further; stops behind each `#include`, so that what is included can be read first. */
  scanOn(characters: number): void {
    const codes = this.#codes;
    let at = this.#at;
    const end = Math.min(this.#text.length, at + characters);
    while (at < end) {
      const code = codes[at];
      if (code <= space) {
        at++;
      } else if (code === less) {
        at = this.#scanHeader(at);
      } else if (code === slash && isCommentMark(codes[at + 1])) {
        at = this.#scanComment(at);
      } else if (code === hash && this.#isDirective(at)) {
        const isInclude = this.#text.startsWith('#include', at);
        at = this.#scanDirective(at);
        if (isInclude) break;
      } else {
        at = this.#scanOpcode(at);
      }
    }
    this.#at = at;
  }

  #scanOpcode(start: number): number {
    const codes = this.#codes;
    let at = start;
    let nameHash = 0;
    let variables = false;
    let code = codes[at];
    while (code > space && code !== equals && code !== less) {
      if (code === dollar) variables = true;
      nameHash = (Math.imul(nameHash, 31) + code) | 0;
      code = codes[++at];
    }
    if (code !== equals) return this.#scanStray(start, at);
    if (at === start) {
      this.#handler.problem(start, start + 1, 'There is no opcode name before this "=". Write name=value.');
    }
    this.#nameStart = start;
    this.#nameEnd = at;
    this.#nameHash = nameHash;
    this.#nameHasVariable = variables;
    do at = this.#scanOpcodeValue();
    while (this.#nameStart >= 0);
    return at;
  }

  /**
   * Reads the value of the opcode whose name was read, tells the handler, and goes on to the name after it. Answers where to read
   * on. In one piece for speed, since it goes through nearly every character of a text.
   */
  #scanOpcodeValue(): number {
    const codes = this.#codes;
    const nameStart = this.#nameStart;
    const nameEnd = this.#nameEnd;
    const nameHash = this.#nameHash;
    let variables = this.#nameHasVariable;
    let at = nameEnd + 1;
    let code = codes[at];
    while (code === space || code === tab) code = codes[++at];
    let valueStart = at;

    // A plain number is by far the commonest value, so it is read along the way.
    let mantissa = 0;
    let scale = 1;
    let digits = 0;
    let negative = false;
    if (code === minus || code === plus) {
      negative = code === minus;
      code = codes[++at];
    }
    while (code >= zero && code <= nine) {
      mantissa = mantissa * 10 + code - zero;
      digits++;
      code = codes[++at];
    }
    if (code === point) {
      code = codes[++at];
      while (code >= zero && code <= nine) {
        mantissa = mantissa * 10 + code - zero;
        scale *= 10;
        digits++;
        code = codes[++at];
      }
    }
    const numberEnd = digits > 0 ? at : -1;

    let valueEnd = at;
    if (numberEnd < 0 || !this.#scanNameAfterNumber(at)) {
      valueEnd = this.#scanValue(valueStart, at);
      at = this.#valueStop;
      if (this.#valueHasVariable) variables = true;
      if (this.#valueHasEquals) {
        this.#handler.problem(
          valueStart,
          valueEnd,
          'A value cannot hold "=". If another opcode starts here, put a space before its name; if it is in the name of a file, rename the file.',
        );
      }
    }
    let number = Number.NaN;
    if (valueEnd === numberEnd) {
      // Fifteen digits are exact in a double, and so is their quotient by a power of ten, rounded once (IEEE 754).
      if (digits <= 15) number = negative ? -mantissa / scale : mantissa / scale;
      else number = Number(this.#text.slice(valueStart, valueEnd));
    }
    // An empty value stands right behind the "=", not behind the blanks that end it.
    if (valueEnd === valueStart) valueStart = valueEnd = nameEnd + 1;
    if (nameEnd > nameStart) {
      this.#handler.opcode(nameStart, nameEnd, nameHash, valueStart, valueEnd, number, variables);
    }
    return at;
  }

  /** Reads the name of an opcode that follows a number after a blank; answers whether there is one. */
  #scanNameAfterNumber(from: number): boolean {
    const codes = this.#codes;
    let at = from;
    let code = codes[at];
    while (code === space || code === tab) code = codes[++at];
    if (at === from) return false;
    const start = at;
    let nameHash = 0;
    let variables = false;
    while (isNamePart[code] !== 0) {
      if (code === dollar) variables = true;
      nameHash = (Math.imul(nameHash, 31) + code) | 0;
      code = codes[++at];
    }
    if (code !== equals || at === start) return false;
    this.#nameStart = start;
    this.#nameEnd = at;
    this.#nameHash = nameHash;
    this.#nameHasVariable = variables;
    return true;
  }

  /** The end of the value that starts at `start`, reading on from `from`. Reads the name of an opcode behind it as well. */
  #scanValue(start: number, from: number): number {
    const codes = this.#codes;
    let at = from;
    let hasVariable = false;
    let hasEquals = false;
    this.#nameStart = -1;
    for (; ; at++) {
      let code = codes[at];
      while (isMark[code] === 0) code = codes[++at];
      if (code === lineFeed || code === carriageReturn) break;
      if (code === equals) {
        if (this.#scanNameBackwards(start, at)) {
          at = this.#nameStart;
          break;
        }
        hasEquals = true;
      } else if (code === dollar) hasVariable = true;
      else if (code === slash) {
        if (isCommentMark(codes[at + 1])) break;
      } else if (code === less) {
        if (this.#isHeader(at)) break;
      } else if (at > start && isBlankCode[codes[at - 1]] !== 0 && this.#isDirective(at)) break;
    }
    this.#valueStop = at;
    this.#valueHasVariable = hasVariable;
    this.#valueHasEquals = hasEquals;
    while (at > start && isBlankCode[codes[at - 1]] !== 0) at--;
    return at;
  }

  /** Reads the name before an "="; answers whether a blank stands before it, so that it is one. */
  #scanNameBackwards(from: number, end: number): boolean {
    const codes = this.#codes;
    let start = end;
    let nameHash = 0;
    let weight = 1;
    let variables = false;
    // The same polynomial as forwards, its terms added from the last.
    while (start > from) {
      const code = codes[start - 1];
      if (isNamePart[code] === 0) break;
      if (code === dollar) variables = true;
      nameHash = (nameHash + Math.imul(code, weight)) | 0;
      weight = Math.imul(weight, 31);
      start--;
    }
    if (start === end || isBlankCode[codes[start - 1]] === 0) return false;
    this.#nameStart = start;
    this.#nameEnd = end;
    this.#nameHash = nameHash;
    this.#nameHasVariable = variables;
    return true;
  }

  /** Reads on over text that is no opcode, up to the end of the line or to something that makes sense. */
  #scanStray(start: number, from: number): number {
    const codes = this.#codes;
    if (codes[start] === dollar) {
      this.#handler.stray(start, from);
      return from;
    }
    const end = this.#scanValue(start, Math.max(from, start + 1));
    const after = codes[this.#valueStop];
    if (this.#valueHasEquals) {
      this.#handler.problem(
        start,
        end,
        'This is neither a header, an opcode nor a comment. Opcodes read name=value, without spaces around "=".',
      );
    } else if (after === equals) {
      this.#handler.problem(
        start,
        end,
        'There is a space between an opcode and its "=". Write name=value without spaces.',
      );
    } else this.#handler.stray(start, end);
    return Math.max(this.#valueStop, start + 1);
  }

  #scanHeader(start: number): number {
    const codes = this.#codes;
    let at = start + 1;
    let code = codes[at];
    while (code !== greater && code !== less && code !== lineFeed && code !== carriageReturn) {
      code = codes[++at];
    }
    if (code === greater) {
      this.#handler.header(start, at + 1, start + 1, at);
      return at + 1;
    }
    // The name up to the first blank is taken for the header, so that the opcodes behind it are not lost.
    let nameEnd = start + 1;
    while (nameEnd < at && isNamePart[codes[nameEnd]] !== 0) nameEnd++;
    this.#handler.problem(
      start,
      Math.max(nameEnd, start + 1),
      'This header is not closed. Put ">" after its name.',
    );
    if (nameEnd > start + 1 && codes[nameEnd] !== equals)
      this.#handler.header(start, nameEnd, start + 1, nameEnd);
    return Math.max(nameEnd, start + 1);
  }

  #scanComment(start: number): number {
    if (this.#codes[start + 1] === slash) {
      const end = this.#lineEndAt(start);
      this.#handler.comment(start, end);
      return end;
    }
    const close = this.#text.indexOf('*/', start + 2);
    if (close < 0) {
      this.#handler.problem(start, start + 2, 'This comment is not closed. Put "*/" at its end.');
      this.#handler.comment(start, this.#text.length);
      return this.#text.length;
    }
    this.#handler.comment(start, close + 2);
    return close + 2;
  }

  #scanDirective(start: number): number {
    const codes = this.#codes;
    const define = this.#text.startsWith('#define', start);
    let at = start + (define ? 7 : 8);
    while (isBlankCode[codes[at]] !== 0) at++;
    if (!define) return this.#scanInclude(start, at);
    const nameStart = at;
    while (codes[at] > space) at++;
    const nameEnd = at;
    while (isBlankCode[codes[at]] !== 0) at++;
    const valueStart = at;
    while (codes[at] > space) {
      if (codes[at] === slash && isCommentMark(codes[at + 1])) break;
      at++;
    }
    if (nameEnd - nameStart < 2 || codes[nameStart] !== dollar) {
      this.#handler.problem(
        start,
        Math.max(nameEnd, start + 7),
        'A #define needs a name that starts with "$", then a value: #define $NAME value.',
      );
      return Math.max(at, start + 7);
    }
    if (at === valueStart) {
      this.#handler.problem(start, nameEnd, 'This #define gives its variable no value: #define $NAME value.');
      at = nameEnd;
      this.#handler.define(start, nameStart, nameEnd, nameEnd, nameEnd);
      return at;
    }
    this.#handler.define(start, nameStart, nameEnd, valueStart, at);
    return at;
  }

  #scanInclude(start: number, from: number): number {
    const quoted = this.#codes[from] === quote;
    const pathStart = quoted ? from + 1 : from;
    let end = pathStart;
    // The path ends at its closing quote; without one, at a comment or the end of the line.
    while (!isLineEnd(this.#codes[end])) {
      if (quoted && this.#codes[end] === quote) {
        this.#handler.include(start, end + 1, pathStart, end);
        return end + 1;
      }
      end++;
    }
    const comment = this.#text.slice(pathStart, end).indexOf('//');
    if (comment >= 0) end = pathStart + comment;
    while (end > pathStart && isBlankCode[this.#codes[end - 1]] !== 0) end--;
    const problemEnd = Math.max(end, start + '#include'.length);
    this.#handler.problem(
      start,
      problemEnd,
      'Put the path of an #include in double quotes: #include "file.sfz".',
    );
    if (end > pathStart) this.#handler.include(start, end, pathStart, end);
    return problemEnd;
  }

  #isDirective(at: number): boolean {
    return (
      (this.#text.startsWith('#define', at) && isNamePart[this.#codes[at + 7]] === 0) ||
      (this.#text.startsWith('#include', at) && isNamePart[this.#codes[at + 8]] === 0)
    );
  }

  /** Whether `<letters>` stands here. */
  #isHeader(start: number): boolean {
    const codes = this.#codes;
    let at = start + 1;
    while (isNamePart[codes[at]] !== 0) at++;
    return at > start + 1 && codes[at] === greater;
  }

  #lineEndAt(from: number): number {
    const codes = this.#codes;
    let at = from;
    while (codes[at] !== lineFeed && codes[at] !== carriageReturn) at++;
    return at;
  }
}
