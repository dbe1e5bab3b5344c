import { portableName } from '../portableNames';

/** Characters of a path in a pack at the most, the folder of the pack counted (our choice; Windows takes 260 for a whole path). */
const mostCharacters = 200;
/** Characters of a name that is cut short, and of an ending; what is longer is part of the name. */
const cutName = 60;
const mostEnding = 10;

/**
 * Gives out paths below one folder that every common system takes: portable names, no two that differ by letter case or
 * by how accents are written alone, none too long.
 */
export class PackPaths {
  readonly #root: string;
  readonly #taken = new Set<string>();
  /** The number to try first, by what was asked for: thousands may ask for the same. */
  readonly #next = new Map<string, number>();
  /** Portable folders by the folder that they stand for. */
  readonly #folders = new Map<string, string>([['', '']]);

  constructor(root: string) {
    this.#root = root;
  }

  /** A path below the root for one with `/`, without `.` and `..` in it; with another ending where one is given. */
  take(path: string, ending?: string): string {
    const parts = path.split('/');
    const name = parts.pop() ?? '';
    const whole = this.#free(this.#folder(parts), name, ending);
    if (this.#root.length + 1 + whole.length <= mostCharacters) return whole;
    this.#taken.delete(keyOf(whole));
    const { stem, end } = partsOf(name);
    return this.#free(this.#folder(['Samples']), stem.slice(0, cutName) + end, ending);
  }

  #folder(parts: readonly string[]): string {
    let folder = '';
    let written = '';
    for (const part of parts) {
      folder += `${part}/`;
      let known = this.#folders.get(folder);
      if (known === undefined) {
        known = `${this.#free(written, part)}/`;
        this.#folders.set(folder, known);
      }
      written = known;
    }
    return written;
  }

  #free(folder: string, name: string, ending?: string): string {
    const parts = partsOf(name);
    const stem = portableName(parts.stem);
    const end = ending ?? (parts.end === '' ? '' : `.${portableName(parts.end.slice(1))}`);
    const asked = keyOf(folder + stem + end);
    for (let number = this.#next.get(asked) ?? 1; ; number++) {
      const tried = folder + (number === 1 ? stem : `${stem} ${number}`) + end;
      const key = keyOf(tried);
      if (this.#taken.has(key)) continue;
      this.#taken.add(key);
      this.#next.set(asked, number);
      return tried;
    }
  }
}

function partsOf(name: string): { stem: string; end: string } {
  const point = name.lastIndexOf('.');
  if (point <= 0 || name.length - point > mostEnding) return { stem: name, end: '' };
  return { stem: name.slice(0, point), end: name.slice(point) };
}

function keyOf(path: string): string {
  return path.normalize('NFKC').toUpperCase().toLowerCase();
}
