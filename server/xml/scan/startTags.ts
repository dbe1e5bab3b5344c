import { beyondAscii, doubtful } from '../../model/text/textBytes';
import { AttributeNames } from './attributeNames';
import { nameEndAt } from './characters';
import type { XmlHandler } from './handler';
import { ValueMark } from './handler';
import { nameHash } from './nameHash';
import { OddAttributes } from './oddAttributes';
import type { NamedReferences } from './references';

const tab = 9;
const lineFeed = 10;
const carriageReturn = 13;
const space = 32;
const doubleQuote = 34;
const dollar = 36;
const ampersand = 38;
const singleQuote = 39;
const plus = 43;
const minus = 45;
const point = 46;
const slash = 47;
const zero = 48;
const nine = 57;
const less = 60;
const equals = 61;
const greater = 62;
const closeBracket = 93;
/** Stands behind the last character. */
const nothing = 0;

/** By code: 1 for what ends a run of ordinary characters in a value. */
const special = new Uint8Array(256);
special.fill(1, 0, space);
for (const code of [doubleQuote, dollar, ampersand, singleQuote, less, doubtful]) special[code] = 1;

/** By code: 1 for what can stand in a name, among ASCII and without the colon of a prefix. */
const inName = new Uint8Array(256);
for (const code of [...'_-.', ...'0123456789', ...'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ']) {
  inName[code.charCodeAt(0)] = 1;
}
const colon = 58;

/** By code: 1 for what ends a run of characters that stand for themselves in a text. */
const specialInText = new Uint8Array(256);
specialInText.fill(1, 0, space);
for (const code of [ampersand, less, closeBracket, doubtful]) specialInText[code] = 1;

/**
 * Reads start tags. Attributes in the usual form are read here character by character in one go; as soon as one is
 * out of the ordinary it is handed to {@link OddAttributes}, which is slower and knows all forms and faults.
 */
export class StartTags {
  readonly #text: string;
  readonly #bytes: Uint8Array;
  readonly #handler: XmlHandler;
  readonly #names: AttributeNames;
  readonly #odd: OddAttributes;
  /** Of the tag read last: where its name ends, whether its element is over with it, and whether its end is missing. */
  nameEnd = 0;
  empty = false;
  broken = false;

  constructor(text: string, bytes: Uint8Array, handler: XmlHandler, references: NamedReferences) {
    this.#text = text;
    this.#bytes = bytes;
    this.#handler = handler;
    this.#names = new AttributeNames(text, bytes);
    this.#odd = new OddAttributes(text, handler, this.#names, references);
  }

  /**
   * Reads the tag whose `<` stands at `start`, before a name; answers where to read on. In one piece for speed, since it goes
   * through nearly every character of a text.
   */
  scan(start: number): number {
    const text = this.#text;
    const bytes = this.#bytes;
    const length = text.length;
    const handler = this.#handler;
    const names = this.#names;
    names.begin();
    this.empty = false;
    this.broken = false;

    let at = start + 1;
    let hash = 0;
    let code = bytes[at];
    while (inName[code] === 1) {
      hash = (Math.imul(hash, 31) + code) | 0;
      code = bytes[++at];
    }
    if (code === colon || code >= 0x80) {
      at = nameEndAt(text, start + 1);
      hash = nameHash(text, start + 1, at);
      code = bytes[at];
    }
    this.nameEnd = at;
    if (code === greater && handler.textElement) {
      const end = this.#textElement(start, at, hash);
      if (end > 0) return end;
    }
    handler.open(start, start + 1, at, hash);

    /** The name of the attribute before. */
    let before = -1;
    for (;;) {
      const gap = at;
      while (code === space || code === lineFeed || code === carriageReturn || code === tab) {
        code = bytes[++at];
      }
      if (code === greater) {
        handler.openEnd(at + 1, false, false);
        return at + 1;
      }
      if (code === slash && bytes[at + 1] === greater) {
        this.empty = true;
        handler.openEnd(at + 2, true, false);
        return at + 2;
      }
      if (code === less || (code === nothing && at >= length)) return this.#unclosed(start, gap);

      const nameStart = at;
      let name = gap !== at ? names.likelyAt(at, before) : -1;
      if (name >= 0) {
        at += names.lengthOf(name);
        code = equals;
      } else if (gap !== at && !(code >= zero && code <= nine) && code !== minus && code !== point) {
        hash = 0;
        while (inName[code] === 1) {
          hash = (Math.imul(hash, 31) + code) | 0;
          code = bytes[++at];
        }
      }
      const nameEnd = at;
      const quote = code === equals ? bytes[at + 1] : nothing;
      if (nameEnd === nameStart || (quote !== doubleQuote && quote !== singleQuote)) {
        at = this.#odd.scan(nameStart, gap !== nameStart);
        code = bytes[at];
        continue;
      }

      at += 2;
      code = bytes[at];
      while (code === space) code = bytes[++at];
      const valueStart = at;

      // A plain number is by far the commonest value, so it is read along the way.
      let mantissa = 0;
      let scale = 1;
      let digits = 0;
      let negative = false;
      if (code === minus || code === plus) {
        negative = code === minus;
        code = bytes[++at];
      }
      while (code >= zero && code <= nine) {
        mantissa = mantissa * 10 + code - zero;
        digits++;
        code = bytes[++at];
      }
      if (code === point) {
        code = bytes[++at];
        while (code >= zero && code <= nine) {
          mantissa = mantissa * 10 + code - zero;
          scale *= 10;
          digits++;
          code = bytes[++at];
        }
      }
      const numberEnd = digits > 0 ? at : -1;

      let marks = 0;
      let usual = true;
      for (;;) {
        while (special[code] === 0) code = bytes[++at];
        if (code === quote) break;
        if (code === dollar) marks = ValueMark.dollar;
        else if (code !== doubleQuote && code !== singleQuote) {
          usual = false;
          break;
        }
        code = bytes[++at];
      }
      const close = at;
      if (usual) {
        code = bytes[++at];
        usual =
          code === space ||
          code === lineFeed ||
          code === slash ||
          code === greater ||
          code === carriageReturn ||
          code === tab;
      }
      if (!usual) {
        at = this.#odd.scan(nameStart, true);
        code = bytes[at];
        continue;
      }

      let valueEnd = close;
      if (valueEnd !== numberEnd) {
        while (valueEnd > valueStart && bytes[valueEnd - 1] === space) valueEnd--;
      }
      let number = Number.NaN;
      if (valueEnd === numberEnd) {
        // Fifteen digits are exact in a double, and so is their quotient by a power of ten, rounded once (IEEE 754).
        if (digits <= 15) number = negative ? -mantissa / scale : mantissa / scale;
        else number = Number(text.slice(valueStart, valueEnd));
      }
      if (name < 0) {
        name = names.numberOf(nameStart, nameEnd, hash);
        names.follow(before, name);
      }
      before = name;
      if (names.isRepeated(name)) this.#odd.reportRepeated(nameStart, nameEnd);
      handler.attribute(name, nameStart, nameEnd, valueStart, valueEnd, number, marks);
    }
  }

  /** Reads on in an element without attributes as a whole; 0 where it is no plain text in the usual form. */
  #textElement(start: number, nameEnd: number, hash: number): number {
    const bytes = this.#bytes;
    let at = nameEnd + 1;
    let code = bytes[at];
    while (code === space) code = bytes[++at];
    const valueStart = at;

    let mantissa = 0;
    let scale = 1;
    let digits = 0;
    const isNegative = code === minus;
    if (isNegative || code === plus) code = bytes[++at];
    while (code >= zero && code <= nine) {
      mantissa = mantissa * 10 + code - zero;
      digits++;
      code = bytes[++at];
    }
    if (code === point) {
      code = bytes[++at];
      while (code >= zero && code <= nine) {
        mantissa = mantissa * 10 + code - zero;
        scale *= 10;
        digits++;
        code = bytes[++at];
      }
    }
    const numberEnd = digits > 0 && digits <= 15 ? at : -1;

    while (specialInText[code] === 0) code = bytes[++at];
    if (code !== less || at === valueStart || bytes[at + 1] !== slash) return 0;
    const closeStart = at;
    at += 2;
    for (let own = start + 1; own < nameEnd; own++, at++) {
      code = bytes[own];
      if (bytes[at] !== code || code >= beyondAscii) return 0;
    }
    if (bytes[at] !== greater) return 0;
    let valueEnd = closeStart;
    while (bytes[valueEnd - 1] === space) valueEnd--;
    // Fifteen digits are exact in a double, and so is their quotient by a power of ten, rounded once (IEEE 754).
    let number = Number.NaN;
    if (valueEnd === numberEnd) number = isNegative ? -mantissa / scale : mantissa / scale;
    this.empty = true;
    this.#handler.textElement?.(start, nameEnd, hash, valueStart, valueEnd, number, closeStart);
    return at + 1;
  }

  #unclosed(start: number, end: number): number {
    const name = this.#text.slice(start + 1, Math.min(this.nameEnd, start + 41));
    this.broken = true;
    this.#handler.problem(
      start,
      end,
      `This tag is not closed. Put "/>" at its end if nothing stands inside, or ">" and later </${name}>.`,
    );
    this.#handler.openEnd(end, false, true);
    return end;
  }
}
