import { declaredEntities } from '../../xml/declaredEntities';
import { decodeXmlText } from '../../xml/scan/references';

/** The text of an element. */
export interface FoundText {
  start: number;
  end: number;
  /** The value where the text at the span is a plain decimal number, else NaN. */
  number: number;
  /** Missing where {@link number} says it. */
  text: string | undefined;
  /** Whether the text stands at the span as it is. */
  isAtSpan: boolean;
}

const cdataStart = '<![CDATA[';

/**
 * Gathers the text of an element from the stretches in which a scanner tells of it, up to the first element inside: what stands
 * behind that counts no more.
 */
export class ElementText {
  readonly #text: string;
  #start = 0;
  #end = 0;
  /** The stretches behind the first one. */
  #more: { start: number; end: number }[] | undefined;
  /** Whether text has been added and not yet taken. */
  isOpen = false;

  constructor(text: string) {
    this.#text = text;
  }

  /** Adds a stretch; CDATA sections have their marks. */
  add(start: number, end: number): void {
    if (!this.isOpen) {
      this.isOpen = true;
      this.#start = start;
      this.#end = end;
    } else {
      this.#more ??= [];
      this.#more.push({ start, end });
    }
  }

  /** The text, with no white space around it. */
  take(): FoundText {
    this.isOpen = false;
    const text = this.#text;
    const start = this.#start;
    const end = this.#end;
    const more = this.#more;
    if (more) {
      this.#more = undefined;
      const parts = [{ start, end }, ...more].map((one) => this.#read(one.start, one.end));
      const last = more[more.length - 1]?.end ?? end;
      return { start, end: last, number: Number.NaN, text: parts.join('').trim(), isAtSpan: false };
    }
    const number = decimalAt(text, start, end);
    if (!Number.isNaN(number)) return { start, end, number, text: undefined, isAtSpan: true };
    if (text.startsWith(cdataStart, start)) return this.#section(start, end);
    const raw = text.slice(start, end);
    const value = raw.includes('&')
      ? decodeXmlText(raw, undefined, declaredEntities(this.#text)).trim()
      : raw;
    return { start, end, number, text: value, isAtSpan: value === raw };
  }

  /** The text of a CDATA section. */
  #section(from: number, to: number): FoundText {
    const text = this.#text;
    let start = from + cdataStart.length;
    let end = text.startsWith(']]>', to - 3) ? Math.max(start, to - 3) : to;
    while (start < end && text[start]?.trim() === '') start++;
    while (end > start && text[end - 1]?.trim() === '') end--;
    return { start, end, number: Number.NaN, text: text.slice(start, end), isAtSpan: true };
  }

  #read(start: number, end: number): string {
    const text = this.#text;
    if (!text.startsWith(cdataStart, start))
      return decodeXmlText(text.slice(start, end), undefined, declaredEntities(this.#text));
    return text.slice(start + cdataStart.length, text.startsWith(']]>', end - 3) ? end - 3 : end);
  }
}

/** The number that stands at `start`..`end` in plain decimal notation with at most fifteen digits; NaN for anything else. */
function decimalAt(text: string, start: number, end: number): number {
  let at = start;
  const sign = text.charCodeAt(at);
  if (sign === 45 || sign === 43) at++;
  let mantissa = 0;
  let digits = 0;
  let scale = 0;
  for (; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code === 46 && scale === 0) scale = 1;
    else if (code >= 48 && code <= 57) {
      mantissa = mantissa * 10 + code - 48;
      digits++;
      scale *= 10;
    } else return Number.NaN;
  }
  if (digits === 0 || digits > 15) return Number.NaN;
  // Fifteen digits are exact in a double, and so is their quotient by a power of ten, rounded once (IEEE 754).
  const number = scale > 1 ? mantissa / scale : mantissa;
  return sign === 45 ? -number : number;
}
