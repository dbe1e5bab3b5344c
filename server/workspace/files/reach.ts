import type { Files } from '../../model/files';
import { isWithin } from '../../model/paths';

/**
 * How far the paths of a text lead. What an instrument includes has to end in the folder of the instrument or in an open
 * folder around it, or in a folder that the user named on purpose: whatever else can be read is nobody's business here.
 */
export class Reach {
  readonly #files: Files;
  readonly #open: readonly string[];
  readonly #named: readonly string[];
  readonly #real = new Map<string, Promise<string>>();

  /**
   * `open` are the folders that are worked in, `named` those that may be included from although they lie elsewhere; all
   * absolute and tidy.
   */
  constructor(files: Files, open: readonly string[] = [], named: readonly string[] = []) {
    this.#files = files;
    this.#open = open;
    this.#named = named;
  }

  /** Whether an instrument in a folder may include a path, as far as the path alone tells. */
  holds(path: string, folder: string): boolean {
    return this.#trees(folder).some((tree) => isWithin(tree, path));
  }

  /** The same for where links lead: `end` is a path without links. */
  async holdsEnd(end: string, folder: string): Promise<boolean> {
    for (const tree of this.#trees(folder)) if (isWithin(await this.#realOf(tree), end)) return true;
    return false;
  }

  #trees(folder: string): string[] {
    return [folder, ...this.#open.filter((open) => isWithin(open, folder)), ...this.#named];
  }

  #realOf(folder: string): Promise<string> {
    let real = this.#real.get(folder);
    if (!real) {
      real = (async () => (await this.#files.realPath?.(folder)) ?? folder)();
      this.#real.set(folder, real);
    }
    return real;
  }
}
