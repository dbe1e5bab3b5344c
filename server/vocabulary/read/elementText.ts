import { decodeXmlText } from '../../xml/references';

/** The text of an element. */
export interface FoundText {
  start: number;
  end: number;
  /** The value where the text at the span is a plain decimal number, else NaN. */
  number: number;
  /** The text where it is not plainly what stands at the span. */
  text: string | undefined;
  isAtSpan: boolean;
}

const cdataStart = '<![CDATA[';

/**
 * Gathers the text of elements from the stretches in which a scanner tells of it. What stands behind an element inside counts
 * no more.
 */
export class ElementText {
  readonly #text: string;
  /** For each open element, whether its text has been taken. */
  readonly #taken: boolean[] = [];
  readonly #stretches: { start: number; end: number }[] = [];

  constructor(text: string) {
    this.#text = text;
  }

  /** Whether text has been added and not yet taken. */
  get isOpen(): boolean {
    return this.#stretches.length > 0;
  }

  enter(): void {
    this.#taken.push(false);
  }

  leave(): void {
    this.#taken.pop();
    this.#stretches.length = 0;
  }

  /** Adds a stretch to the text of the innermost element; CDATA sections have their marks. */
  add(start: number, end: number): void {
    if (this.#taken[this.#taken.length - 1] === false) this.#stretches.push({ start, end });
  }

  /** The text of the innermost element, with no white space around it. */
  take(): FoundText {
    const text = this.#text;
    const stretches = this.#stretches;
    const first = stretches[0] ?? { start: 0, end: 0 };
    const last = stretches[stretches.length - 1] ?? first;
    const isOne = stretches.length === 1;
    this.#taken[this.#taken.length - 1] = true;
    let { start } = first;
    let { end } = last;
    const number = isOne ? decimalAt(text, start, end) : Number.NaN;
    if (!Number.isNaN(number)) {
      stretches.length = 0;
      return { start, end, number, text: undefined, isAtSpan: true };
    }
    const whole = stretches
      .map((one) => this.#read(one.start, one.end))
      .join('')
      .trim();
    if (isOne && text.startsWith(cdataStart, start)) {
      start += cdataStart.length;
      end = text.startsWith(']]>', end - 3) ? end - 3 : end;
      while (start < end && text[start]?.trim() === '') start++;
      while (end > start && text[end - 1]?.trim() === '') end--;
    }
    stretches.length = 0;
    return { start, end, number, text: whole, isAtSpan: isOne && text.slice(start, end) === whole };
  }

  #read(start: number, end: number): string {
    const text = this.#text;
    if (!text.startsWith(cdataStart, start)) return decodeXmlText(text.slice(start, end));
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
