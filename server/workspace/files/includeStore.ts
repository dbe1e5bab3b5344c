import type { Files } from '../../model/files';
import type { Included } from '../../model/notation';
import { readWholeText } from './readWhole';

/**
 * The texts of included files: those open in the editor as they stand there, others as they are on the disk, read
 * once and remembered until told of a change.
 */
export class IncludeStore {
  readonly #files: Files;
  readonly #openText: (path: string) => string | undefined;
  readonly #texts = new Map<string, Included>();
  readonly #wanted = new Set<string>();
  /** Counts what was told of changes: what was under way meanwhile may be out of date and is not kept. */
  #changes = 0;

  constructor(files: Files, openText: (path: string) => string | undefined = () => undefined) {
    this.#files = files;
    this.#openText = openText;
  }

  /** The text of a file; `pending` asks for it to be read by {@link loadWanted}. */
  get(path: string): Included {
    const open = this.#openText(path);
    if (open !== undefined) return { kind: 'text', text: open };
    const known = this.#texts.get(path);
    if (known) return known;
    this.#wanted.add(path);
    return { kind: 'pending' };
  }

  get wants(): boolean {
    return this.#wanted.size > 0;
  }

  async loadWanted(): Promise<void> {
    const paths = [...this.#wanted];
    this.#wanted.clear();
    for (const path of paths) {
      const changes = this.#changes;
      const whole = await readWholeText(this.#files, path);
      if (changes !== this.#changes) continue;
      this.#texts.set(path, whole.kind === 'text' ? { kind: 'text', text: whole.text } : { kind: 'missing' });
    }
  }

  /** Says that a file came, went or changed. */
  forget(path: string): void {
    this.#changes++;
    for (const known of this.#texts.keys()) {
      if (known === path || known.startsWith(`${path}/`)) this.#texts.delete(known);
    }
  }
}
