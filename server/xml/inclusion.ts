import type { InstrumentBuilder } from '../model/instrumentBuilder';
import type { ReadOptions } from '../model/notation';
import { folderOf, joinPath, relativePath } from '../model/paths';
import type { Steps } from '../model/steps';

/** Included text that one instrument may bring in, in UTF-16 units; a chain of files that include one another twice grows without end. */
const mostIncluded = 64 * 1024 * 1024;
const mostIncludes = 10_000;
/** Files within files. */
const mostDepth = 64;

/** An included file to be read in the place of its include, or why it is not. */
export type Inclusion =
  | { kind: 'text'; path: string; text: string }
  | { kind: 'refused'; path: string; code: string; message: string }
  | { kind: 'pending'; path: string };

/** Finds included files for one instrument and refuses circles and floods. */
export class Inclusions {
  readonly #options: ReadOptions;
  readonly #builder: InstrumentBuilder;
  /** The files that are being read, the main file first. */
  readonly #open: string[] = [];
  #included = 0;
  #includes = 0;

  constructor(options: ReadOptions, builder: InstrumentBuilder) {
    this.#options = options;
    this.#builder = builder;
  }

  /** Says that a file is being read while `steps` are taken. */
  *within(path: string, steps: Steps<void>): Steps<void> {
    const before = this.#size();
    this.#open.push(path);
    yield* steps;
    this.#open.pop();
    // What the file itself brought in through further files counts by what has come of it.
    if (this.#open.length > 0) this.#included += 8 * (this.#size() - before);
  }

  #size(): number {
    return this.#builder.headerCount + this.#builder.parameterCount;
  }

  /** The file that an include names, its path joined to the folder of the main file. */
  find(written: string): Inclusion {
    const path = joinPath(folderOf(this.#options.path), written);
    const refused = (code: string, message: string): Inclusion => ({ kind: 'refused', path, code, message });
    if (this.#open.includes(path)) {
      const folder = folderOf(this.#options.path);
      const circle = [...this.#open.slice(this.#open.indexOf(path)), path];
      const way = circle.map((one) => `"${relativePath(folder, one)}"`).join(' → ');
      return refused(
        'include-cycle',
        `This file includes itself: ${way}. Remove the include that closes the circle.`,
      );
    }
    if (this.#open.length > mostDepth) {
      return refused(
        'include-cycle',
        `Files include one another more than ${mostDepth} deep. The file is left out here.`,
      );
    }
    const included = this.#options.include?.(path) ?? { kind: 'pending' };
    if (included.kind === 'missing') {
      return refused(
        'include-missing',
        `There is no file "${written}". Paths start at the folder of the main file. Correct the path or put the file there.`,
      );
    }
    if (included.kind === 'refused') return refused('include-refused', `"${written}" ${included.reason}`);
    if (included.kind === 'pending') return { kind: 'pending', path };
    this.#included += included.text.length;
    this.#includes++;
    if (this.#included > mostIncluded || this.#includes > mostIncludes) {
      return refused(
        'include-cycle',
        'Included files bring in more text than an instrument can hold. The file is left out here.',
      );
    }
    return { kind: 'text', path, text: included.text };
  }
}
