import { isInstrumentFileName } from '../../model/fileNames';
import type { Files } from '../../model/files';
import type { Instrument } from '../../model/instrument';
import { readInstrument } from '../analyse';
import type { IncludeStore } from './includeStore';
import { instrumentFilesBelow } from './instrumentFiles';
import { readWholeText } from './readWhole';

/** Longer texts are instruments themselves, written by a program, and not looked through for includes. */
const mostBytes = 16 * 1024 * 1024;

/** The paths that an instrument includes, directly or through other files. */
export function includedPaths(instrument: Instrument): Set<string> {
  const paths = new Set<string>();
  for (const { kind, value } of instrument.directives) if (kind === 'include') paths.add(value);
  return paths;
}

/**
 * Which instruments include which files, so that a file that only others include is not judged by itself. Folders are
 * looked through once, when first asked; after that changes are told by {@link forget} and {@link note}.
 */
export class IncludeIndex {
  readonly #files: Files;
  readonly #includes: IncludeStore;
  readonly #included = new Map<string, ReadonlySet<string>>();
  readonly #mains = new Map<string, Set<string>>();
  /** Files that came or changed since they were looked through. */
  readonly #changed = new Set<string>();
  #folders: readonly string[] = [];
  #scan: Promise<void> | undefined;
  #isScanned = false;

  constructor(files: Files, includes: IncludeStore) {
    this.#files = files;
    this.#includes = includes;
  }

  /** Sets the folders that are looked through. */
  setFolders(folders: readonly string[]): void {
    this.#folders = folders;
    this.lookAgain();
  }

  /** Has the folders looked through anew. */
  lookAgain(): void {
    this.#scan = undefined;
    this.#isScanned = false;
  }

  /** Whether the folders were looked through and nothing changed since. */
  get isUpToDate(): boolean {
    return this.#isScanned && this.#changed.size === 0;
  }

  /** Looks through the folders, or through what changed in them. */
  async update(): Promise<void> {
    this.#scan ??= this.#scanFolders();
    await this.#scan;
    for (const path of [...this.#changed]) {
      this.#changed.delete(path);
      await this.#look(path);
    }
  }

  /**
   * The instrument in whose context a file is to be judged, as far as is known: one that includes it and is not
   * included itself, if there is such a one; `undefined` for a file that stands by itself or includes its includer.
   */
  mainOf(path: string, isOpen: (path: string) => boolean): string | undefined {
    const mains = [...(this.#mains.get(path) ?? [])].filter(
      (main) => main !== path && !this.#included.get(path)?.has(main),
    );
    const rank = (main: string) => ((this.#mains.get(main)?.size ?? 0) > 0 ? 2 : 0) + (isOpen(main) ? 0 : 1);
    return mains.sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1))[0];
  }

  /** Takes in what an instrument turned out to include. */
  note(path: string, included: ReadonlySet<string>): void {
    const before = this.#included.get(path);
    if (before === included || (!before && included.size === 0)) return;
    for (const one of before ?? []) this.#mains.get(one)?.delete(path);
    if (included.size === 0) this.#included.delete(path);
    else this.#included.set(path, included);
    for (const one of included) {
      const mains = this.#mains.get(one);
      if (mains) mains.add(path);
      else this.#mains.set(one, new Set([path]));
    }
  }

  /** Says that a file came, went or changed. */
  forget(path: string): void {
    for (const known of [...this.#included.keys()]) {
      if (known !== path && known.startsWith(`${path}/`)) this.#changed.add(known);
    }
    if (isInstrumentFileName(path)) this.#changed.add(path);
  }

  async #scanFolders(): Promise<void> {
    const paths = await instrumentFilesBelow(this.#files, this.#folders);
    // One that cannot be read keeps none of the others from it.
    for (const path of paths) await this.#look(path).catch(() => {});
    this.#isScanned = true;
  }

  async #look(path: string): Promise<void> {
    const stat = await this.#files.stat(path);
    if (stat?.kind !== 'file' || stat.size > mostBytes) {
      this.note(path, new Set());
      return;
    }
    const whole = await readWholeText(this.#files, path);
    const text = whole.kind === 'text' ? whole.text : '';
    const { detect } = await import('../notations/detect');
    const detected = text.includes('include') ? detect(path, text) : undefined;
    if (detected?.kind !== 'notation') {
      this.note(path, new Set());
      return;
    }
    const source = { path, text, notation: detected.notation };
    this.note(path, includedPaths(await readInstrument(source, this.#includes)));
  }
}
