import type { Files } from '../../model/files';
import type { Included } from '../../model/notation';
import { isWithin } from '../../model/paths';
import { isInstrumentText } from '../notations/isInstrumentText';
import { Reach } from './reach';
import type { WholeText } from './readWhole';
import { readWholeText } from './readWhole';
import { refusalWords } from './refusalWords';

const outside =
  'lies outside the folder of the instrument and the open folder around it, so it is not read. Put it there, or name its folder in the setting zonewright.includeFolders or by --include-folder.';
const linkedOutside = outside.replace('lies', 'leads by a link to a place');
const otherText =
  'is not the text of an instrument, so it is not read here. Correct the path, or remove the include.';

/** A file of the disk as it was read. */
interface KnownFile {
  /** Missing while only instruments asked that may not include it: then nothing of it is read. */
  whole?: WholeText;
  /** Where the path ends when links are followed. */
  end: string;
  /** By the folder of an instrument: whether the end lies where that may include from. */
  held: Map<string, boolean>;
  isInstrument?: boolean;
}

/**
 * The texts of included files: those open in the editor as they stand there, others as they are on the disk, read
 * once and remembered until told of a change. Files out of reach, and such as hold no instrument, are not given.
 */
export class IncludeStore {
  readonly #files: Files;
  readonly #openText: (path: string) => string | undefined;
  readonly #known = new Map<string, KnownFile>();
  /** By path: the folders of the instruments that asked. */
  readonly #wanted = new Map<string, Set<string | undefined>>();
  #reach: Reach;
  /** Counts what was told of changes: what was under way meanwhile may be out of date and is not kept. */
  #changes = 0;

  constructor(
    files: Files,
    openText: (path: string) => string | undefined = () => undefined,
    reach = new Reach(files),
  ) {
    this.#files = files;
    this.#openText = openText;
    this.#reach = reach;
  }

  /** Sets how far includes lead from now on. */
  setReach(reach: Reach): void {
    this.#changes++;
    this.#reach = reach;
    this.#known.clear();
  }

  /** The text of a file whatever it holds; `pending` asks for it to be read by {@link loadWanted}. */
  get(path: string): Included {
    const open = this.#openText(path);
    if (open !== undefined) return { kind: 'text', text: open };
    const known = this.#known.get(path);
    return known?.whole ? includedOf(known.whole) : this.#want(path, undefined);
  }

  /** The text of a file for an instrument in a folder that includes it; `pending` as for {@link get}. */
  includedBy(folder: string, path: string): Included {
    if (!this.#reach.holds(path, folder)) return { kind: 'refused', reason: outside };
    const open = this.#openText(path);
    if (open !== undefined) return { kind: 'text', text: open };
    const known = this.#known.get(path);
    if (!known) return this.#want(path, folder);
    const isHeld = known.end === path || known.held.get(folder);
    if (isHeld === undefined) return this.#want(path, folder);
    if (!isHeld) return { kind: 'refused', reason: linkedOutside };
    const { whole } = known;
    if (!whole) return this.#want(path, folder);
    if (whole.kind === 'text') {
      known.isInstrument ??= isInstrumentText(known.end, whole.text);
      if (!known.isInstrument) return { kind: 'refused', reason: otherText };
    }
    return includedOf(whole);
  }

  get wants(): boolean {
    return this.#wanted.size > 0;
  }

  async loadWanted(): Promise<void> {
    const wanted = [...this.#wanted];
    this.#wanted.clear();
    for (const [path, folders] of wanted) {
      const changes = this.#changes;
      const known = this.#known.get(path) ?? (await this.#look(path));
      await this.#load(path, known, folders);
      if (changes === this.#changes) this.#known.set(path, known);
    }
  }

  async #look(path: string): Promise<KnownFile> {
    return { end: (await this.#files.realPath?.(path)) ?? path, held: new Map() };
  }

  async #load(path: string, known: KnownFile, folders: ReadonlySet<string | undefined>): Promise<void> {
    const { end, held } = known;
    for (const folder of folders) {
      if (folder !== undefined && end !== path) held.set(folder, await this.#reach.holdsEnd(end, folder));
    }
    const mayRead = end === path || folders.has(undefined) || [...held.values()].includes(true);
    if (mayRead) known.whole ??= await readWholeText(this.#files, path);
  }

  #want(path: string, folder: string | undefined): Included {
    const folders = this.#wanted.get(path);
    if (folders) folders.add(folder);
    else this.#wanted.set(path, new Set([folder]));
    return { kind: 'pending' };
  }

  /** Forgets all files. */
  forgetAll(): void {
    this.#changes++;
    this.#known.clear();
  }

  /** Says that a file came, went or changed. */
  forget(path: string): void {
    this.#changes++;
    for (const known of this.#known.keys()) if (isWithin(path, known)) this.#known.delete(known);
  }
}

function includedOf(whole: WholeText): Included {
  switch (whole.kind) {
    case 'text':
      return { kind: 'text', text: whole.text };
    case 'missing':
      return { kind: 'missing' };
    case 'binary':
      return { kind: 'refused', reason: otherText };
    case 'refused':
      return { kind: 'refused', reason: `${refusalWords(whole.refusal)}.` };
    case 'too-large':
      return { kind: 'refused', reason: 'holds more text than an instrument can have, so it is not read.' };
  }
}
