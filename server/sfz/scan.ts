/**
 * What {@link scanSfz} tells its caller; all positions are offsets in the text. The scanner knows the shape of SFZ
 * text alone, not which headers or opcodes exist.
 */
export interface SfzHandler {
  /** `<name>`: the whole tag and the name inside. */
  header(start: number, end: number, nameStart: number, nameEnd: number): void;
  /**
   * `name=value`. `hash` is that of the name for `ParameterNames.idOfHash`, `number` the value where it is a plain
   * decimal number (else NaN). `variables` says that a `$` stands in the name or the value.
   */
  opcode(
    nameStart: number,
    nameEnd: number,
    hash: number,
    valueStart: number,
    valueEnd: number,
    number: number,
    variables: boolean,
  ): void;
  /** `#define $NAME value`. */
  define(start: number, nameStart: number, nameEnd: number, valueStart: number, valueEnd: number): void;
  /** `#include "path"`: the directive with its quotes, and the path inside. */
  include(start: number, end: number, pathStart: number, pathEnd: number): void;
  /** `// …` or a block comment, with its marks. */
  comment(start: number, end: number): void;
  /** Text that is nothing of the above, on one line. */
  stray(start: number, end: number): void;
  /** Something that is broken but could be read in part. */
  problem(start: number, end: number, message: string): void;
}

const tab = 9;
const lineFeed = 10;
const carriageReturn = 13;
const space = 32;
const hash = 35;
const dollar = 36;
const star = 42;
const plus = 43;
const minus = 45;
const point = 46;
const slash = 47;
const zero = 48;
const nine = 57;
const less = 60;
const equals = 61;
const greater = 62;

/**
 * Reads SFZ text from start to end in one pass and tells the handler what stands there. Never throws, never goes
 * back further than one word. The rules are those of the public documentation of the open SFZ format: a value ends
 * at the line's end, or before white space that `opcode=`, a header or a directive follows, or before a comment.
 */
export function scanSfz(text: string, handler: SfzHandler): void {
  const length = text.length;
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  while (at < length) {
    const code = text.charCodeAt(at);
    if (code <= space) {
      at++;
    } else if (code === less) {
      at = scanHeader(text, at, handler);
    } else if (code === slash && isCommentMark(text.charCodeAt(at + 1))) {
      at = scanComment(text, at, handler);
    } else if (code === hash && isDirective(text, at)) {
      at = scanDirective(text, at, handler);
    } else {
      at = scanOpcode(text, at, handler);
    }
  }
}

function scanOpcode(text: string, start: number, handler: SfzHandler): number {
  let at = start;
  let nameHash = 0;
  let variables = false;
  let code = text.charCodeAt(at);
  while (code > space && code !== equals && code !== less) {
    if (code === dollar) variables = true;
    nameHash = (Math.imul(nameHash, 31) + code) | 0;
    code = text.charCodeAt(++at);
  }
  if (code !== equals) return scanStray(text, start, at, handler);
  if (at === start) {
    handler.problem(start, start + 1, 'There is no opcode name before this "=". Write name=value.');
  }
  next.nameStart = start;
  next.nameEnd = at;
  next.hash = nameHash;
  next.variables = variables;
  do at = scanValueOfNext(text, handler);
  while (next.nameStart >= 0);
  return at;
}

/**
 * The opcode whose value is to be read next: its name was read on the way to the end of the value before it.
 * `nameStart` is −1 where no opcode follows directly. One object for all of the text saves making one for each opcode.
 */
const next = { nameStart: -1, nameEnd: 0, hash: 0, variables: false };

/** Reads the value of the opcode in {@link next}, tells the handler, and leaves the opcode after it there. Answers where to read on. */
function scanValueOfNext(text: string, handler: SfzHandler): number {
  const { nameStart, nameEnd, hash: nameHash } = next;
  let { variables } = next;
  let at = nameEnd + 1;
  let code = text.charCodeAt(at);
  while (code === space || code === tab) code = text.charCodeAt(++at);
  const valueStart = at;

  // A plain number is by far the commonest value, so it is read along the way.
  let mantissa = 0;
  let scale = 1;
  let digits = 0;
  let negative = false;
  if (code === minus || code === plus) {
    negative = code === minus;
    code = text.charCodeAt(++at);
  }
  while (code >= zero && code <= nine) {
    mantissa = mantissa * 10 + code - zero;
    digits++;
    code = text.charCodeAt(++at);
  }
  if (code === point) {
    code = text.charCodeAt(++at);
    while (code >= zero && code <= nine) {
      mantissa = mantissa * 10 + code - zero;
      scale *= 10;
      digits++;
      code = text.charCodeAt(++at);
    }
  }
  const numberEnd = digits > 0 ? at : -1;

  let valueEnd = at;
  if (numberEnd < 0 || !scanNameAfterNumber(text, at, code)) {
    valueEnd = scanValue(text, valueStart, at, code);
    at = valueStop;
    if (valueHasVariable) variables = true;
    if (valueHasEquals) {
      handler.problem(
        valueStart,
        valueEnd,
        'A value cannot hold "=". If another opcode starts here, put a space before its name.',
      );
    }
  }
  let number = Number.NaN;
  if (valueEnd === numberEnd) {
    // Fifteen digits are exact in a double, and so is their quotient by a power of ten, rounded once (IEEE 754).
    if (digits <= 15) number = negative ? -mantissa / scale : mantissa / scale;
    else number = Number(text.slice(valueStart, valueEnd));
  }
  if (nameEnd > nameStart) {
    handler.opcode(nameStart, nameEnd, nameHash, valueStart, valueEnd, number, variables);
  }
  return at;
}

/** Reads the name of an opcode that follows a number after a blank into {@link next}; answers whether there is one. */
function scanNameAfterNumber(text: string, from: number, first: number): boolean {
  let at = from;
  let code = first;
  while (code === space || code === tab) code = text.charCodeAt(++at);
  if (at === from) return false;
  const start = at;
  let nameHash = 0;
  let variables = false;
  while (isNamePart(code)) {
    if (code === dollar) variables = true;
    nameHash = (Math.imul(nameHash, 31) + code) | 0;
    code = text.charCodeAt(++at);
  }
  if (code !== equals || at === start) return false;
  next.nameStart = start;
  next.nameEnd = at;
  next.hash = nameHash;
  next.variables = variables;
  return true;
}

// Further results of scanValue, kept here instead of in an object for each value.
let valueStop = 0;
let valueHasVariable = false;
let valueHasEquals = false;

/** The end of the value that starts at `start`, reading on from `from`. The name of an opcode behind it goes into {@link next}. */
function scanValue(text: string, start: number, from: number, first: number): number {
  let at = from;
  let code = first;
  next.nameStart = -1;
  valueHasVariable = false;
  valueHasEquals = false;
  for (; at < text.length; code = text.charCodeAt(++at)) {
    // Letters and digits, which most values consist of, end nothing.
    if (code > equals || (code >= zero && code <= nine)) continue;
    if (code === lineFeed || code === carriageReturn) break;
    if (code === equals) {
      if (scanNameBackwards(text, start, at)) {
        at = next.nameStart;
        break;
      }
      valueHasEquals = true;
    } else if (code === dollar) valueHasVariable = true;
    else if (code === slash) {
      if (isCommentMark(text.charCodeAt(at + 1))) break;
    } else if (code === less) {
      if (isHeaderAt(text, at)) break;
    } else if (code === hash && at > start && isBlank(text.charCodeAt(at - 1)) && isDirective(text, at))
      break;
  }
  valueStop = at;
  while (at > start && isBlank(text.charCodeAt(at - 1))) at--;
  return at;
}

/** Reads the name before an "=" into {@link next}; answers whether a blank stands before it, so that it is one. */
function scanNameBackwards(text: string, from: number, end: number): boolean {
  let start = end;
  let nameHash = 0;
  let weight = 1;
  let variables = false;
  // The same polynomial as forwards, its terms added from the last.
  while (start > from) {
    const code = text.charCodeAt(start - 1);
    if (!isNamePart(code)) break;
    if (code === dollar) variables = true;
    nameHash = (nameHash + Math.imul(code, weight)) | 0;
    weight = Math.imul(weight, 31);
    start--;
  }
  if (start === end || !isBlank(text.charCodeAt(start - 1))) return false;
  next.nameStart = start;
  next.nameEnd = end;
  next.hash = nameHash;
  next.variables = variables;
  return true;
}

/** Reads on over text that is no opcode, up to the end of the line or to something that makes sense. */
function scanStray(text: string, start: number, from: number, handler: SfzHandler): number {
  if (text.charCodeAt(start) === dollar) {
    handler.stray(start, from);
    return from;
  }
  const end = scanValue(text, start, Math.max(from, start + 1), text.charCodeAt(Math.max(from, start + 1)));
  const after = text.charCodeAt(valueStop);
  if (valueHasEquals) {
    handler.problem(
      start,
      end,
      'This is neither a header, an opcode nor a comment. Opcodes read name=value, without spaces around "=".',
    );
  } else if (after === equals) {
    handler.problem(
      start,
      end,
      'There is a space between an opcode and its "=". Write name=value without spaces.',
    );
  } else handler.stray(start, end);
  return Math.max(valueStop, start + 1);
}

function scanHeader(text: string, start: number, handler: SfzHandler): number {
  let at = start + 1;
  let code = text.charCodeAt(at);
  while (
    code !== greater &&
    code !== less &&
    code !== lineFeed &&
    code !== carriageReturn &&
    at < text.length
  ) {
    code = text.charCodeAt(++at);
  }
  if (code === greater) {
    handler.header(start, at + 1, start + 1, at);
    return at + 1;
  }
  // The name up to the first blank is taken for the header, so that the opcodes behind it are not lost.
  let nameEnd = start + 1;
  while (nameEnd < at && isNamePart(text.charCodeAt(nameEnd))) nameEnd++;
  handler.problem(start, Math.max(nameEnd, start + 1), 'This header is not closed. Put ">" after its name.');
  if (nameEnd > start + 1 && text.charCodeAt(nameEnd) !== equals)
    handler.header(start, nameEnd, start + 1, nameEnd);
  return Math.max(nameEnd, start + 1);
}

function scanComment(text: string, start: number, handler: SfzHandler): number {
  if (text.charCodeAt(start + 1) === slash) {
    const end = lineEndAt(text, start);
    handler.comment(start, end);
    return end;
  }
  const close = text.indexOf('*/', start + 2);
  if (close < 0) {
    handler.problem(start, start + 2, 'This comment is not closed. Put "*/" at its end.');
    handler.comment(start, text.length);
    return text.length;
  }
  handler.comment(start, close + 2);
  return close + 2;
}

function scanDirective(text: string, start: number, handler: SfzHandler): number {
  const define = text.startsWith('#define', start);
  let at = start + (define ? 7 : 8);
  while (isBlank(text.charCodeAt(at))) at++;
  if (!define) return scanInclude(text, start, at, handler);
  const nameStart = at;
  while (at < text.length && text.charCodeAt(at) > space) at++;
  const nameEnd = at;
  while (isBlank(text.charCodeAt(at))) at++;
  const valueStart = at;
  while (at < text.length && text.charCodeAt(at) > space) {
    if (text.charCodeAt(at) === slash && isCommentMark(text.charCodeAt(at + 1))) break;
    at++;
  }
  if (nameEnd - nameStart < 2 || text.charCodeAt(nameStart) !== dollar) {
    handler.problem(
      start,
      Math.max(nameEnd, start + 7),
      'A #define needs a name that starts with "$", then a value: #define $NAME value.',
    );
    return Math.max(at, start + 7);
  }
  if (at === valueStart) {
    handler.problem(start, nameEnd, 'This #define gives its variable no value: #define $NAME value.');
    at = nameEnd;
    handler.define(start, nameStart, nameEnd, nameEnd, nameEnd);
    return at;
  }
  handler.define(start, nameStart, nameEnd, valueStart, at);
  return at;
}

function scanInclude(text: string, start: number, from: number, handler: SfzHandler): number {
  const lineEnd = lineEndAt(text, from);
  if (text[from] === '"') {
    const close = text.indexOf('"', from + 1);
    if (close >= 0 && close < lineEnd) {
      handler.include(start, close + 1, from + 1, close);
      return close + 1;
    }
  }
  let pathStart = from;
  if (text[from] === '"') pathStart++;
  let end = lineEnd;
  const comment = text.indexOf('//', pathStart);
  if (comment >= 0 && comment < end) end = comment;
  while (end > pathStart && isBlank(text.charCodeAt(end - 1))) end--;
  handler.problem(
    start,
    Math.max(end, start + 8),
    'The path of an #include stands in double quotes: #include "file.sfz".',
  );
  if (end > pathStart) handler.include(start, end, pathStart, end);
  return Math.max(end, start + 8);
}

function isDirective(text: string, at: number): boolean {
  return (
    (text.startsWith('#define', at) && !isNamePart(text.charCodeAt(at + 7))) ||
    (text.startsWith('#include', at) && !isNamePart(text.charCodeAt(at + 8)))
  );
}

function isCommentMark(code: number): boolean {
  return code === slash || code === star;
}

/** Whether `<letters>` stands here. */
function isHeaderAt(text: string, start: number): boolean {
  let at = start + 1;
  while (isNamePart(text.charCodeAt(at))) at++;
  return at > start + 1 && text.charCodeAt(at) === greater;
}

/** Letters, digits, `_`, and `$` for variables in names; a NaN at the end of the text is none of them. */
function isNamePart(code: number): boolean {
  return (
    (code >= 97 && code <= 122) ||
    (code >= zero && code <= nine) ||
    code === 95 ||
    (code >= 65 && code <= 90) ||
    code === dollar
  );
}

function isBlank(code: number): boolean {
  return code === space || code === tab || (code < space && code !== lineFeed && code !== carriageReturn);
}

function lineEndAt(text: string, from: number): number {
  let at = from;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === lineFeed || code === carriageReturn) break;
  }
  return at;
}
