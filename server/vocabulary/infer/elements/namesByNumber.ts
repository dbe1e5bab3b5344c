/** More characters of a name say no more. */
export const longestName = 200;

/** The names of attributes by the numbers that the scanner gives equal ones, each cut out of the text once. */
export class NamesByNumber {
  readonly #text: string;
  readonly #names: string[] = [];

  constructor(text: string) {
    this.#text = text;
  }

  of(attribute: number, start: number, end: number): string {
    let name = this.#names[attribute];
    if (name === undefined) {
      name = this.#text.slice(start, Math.min(end, start + longestName));
      this.#names[attribute] = name;
    }
    return name;
  }
}
