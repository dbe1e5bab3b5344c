/** Characters of a name; the field has one more for the zero behind it. */
const longest = 19;

/** Gives out names that differ, in ASCII and short enough for the fields of a SoundFont. */
export class ShortNames {
  readonly #taken = new Set<string>();

  /** The name itself, cut where it is too long, with a number where it is taken; `suffix` always stands at its end. */
  take(wanted: string, suffix = ''): string {
    const plain = asciiOf(wanted) || 'Unnamed';
    for (let number = 1; ; number++) {
      const end = number === 1 ? suffix : ` ${number}${suffix}`;
      const name = plain.slice(0, longest - end.length).trimEnd() + end;
      if (this.#taken.has(name)) continue;
      this.#taken.add(name);
      return name;
    }
  }
}

/** A text in printable ASCII: letters without their marks, other characters as `_`. */
export function asciiOf(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^ -~]/g, '_')
    .replace(/\s+/g, ' ')
    .trim();
}
