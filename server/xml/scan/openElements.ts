/** An element whose end has not been reached. */
export interface OpenElement {
  tagStart: number;
  nameStart: number;
  nameEnd: number;
  /** Its tag was broken and has been reported, so a missing end tag is no news. */
  broken: boolean;
}

/** The elements that are open at a point of the text, innermost last. */
export class OpenElements {
  readonly #text: string;
  readonly #stack: OpenElement[] = [];
  /** How many open elements have each name; kept only once an end tag did not fit, which well-formed text never needs. */
  #counts: Map<string, number> | undefined;

  constructor(text: string) {
    this.#text = text;
  }

  get depth(): number {
    return this.#stack.length;
  }

  get innermost(): OpenElement | undefined {
    return this.#stack[this.#stack.length - 1];
  }

  push(element: OpenElement): void {
    this.#stack.push(element);
    if (this.#counts) this.#count(element, 1);
  }

  pop(): OpenElement | undefined {
    const element = this.#stack.pop();
    if (element && this.#counts) this.#count(element, -1);
    return element;
  }

  nameOf(element: OpenElement): string {
    return this.#text.slice(element.nameStart, element.nameEnd);
  }

  /** Whether the innermost element has the name that stands at `start`..`end`. */
  innermostIsNamed(start: number, end: number): boolean {
    const element = this.innermost;
    if (!element || element.nameEnd - element.nameStart !== end - start) return false;
    for (let at = start, own = element.nameStart; at < end; at++, own++) {
      if (this.#text.charCodeAt(at) !== this.#text.charCodeAt(own)) return false;
    }
    return true;
  }

  /** Whether any open element has a name. */
  has(name: string): boolean {
    if (!this.#counts) {
      this.#counts = new Map();
      for (const element of this.#stack) this.#count(element, 1);
    }
    return (this.#counts.get(name) ?? 0) > 0;
  }

  #count(element: OpenElement, change: number): void {
    const name = this.nameOf(element);
    this.#counts?.set(name, (this.#counts.get(name) ?? 0) + change);
  }
}
