import { isDeviceName } from '../model/fileNames';

/** Characters that a name cannot have on Windows (Microsoft, Naming Files, Paths, and Namespaces), and what no terminal shows. */
const refused = /[<>:"/\\|?*\u0000-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069]+/g;
/** Bytes of a name at the most; file systems take 255 (common practice), and an ending and a number are to fit. */
const mostBytes = 120;

/** A name that every common system takes for a file or folder, as near to the given one as can be. */
export function portableName(name: string): string {
  const plain = name.normalize('NFC').replace(refused, '-').replace(/\s+/g, ' ');
  const trimmed = cut(plain.replace(/^[\s.]+|[\s.]+$/g, '')).replace(/[\s.]+$/, '');
  if (trimmed === '') return '_';
  return isDeviceName(trimmed) ? `_${trimmed}` : trimmed;
}

/** Gives out portable names of which no two differ by letter case or accents written in another way only. */
export class PortableNames {
  readonly #taken = new Set<string>();

  /** The name, or it with the first number behind it that is free. */
  take(name: string): string {
    const portable = portableName(name);
    for (let number = 1; ; number++) {
      const tried = number === 1 ? portable : `${portable} ${number}`;
      const key = tried.toLowerCase();
      if (this.#taken.has(key)) continue;
      this.#taken.add(key);
      return tried;
    }
  }
}

function cut(name: string): string {
  const bytes = new TextEncoder();
  if (bytes.encode(name).length <= mostBytes) return name;
  let kept = '';
  let length = 0;
  for (const character of name) {
    length += bytes.encode(character).length;
    if (length > mostBytes) break;
    kept += character;
  }
  return kept;
}
