import { isXmlFileName } from '../model/fileNames';
import type { Files } from '../model/files';
import { folderOf } from '../model/paths';
import { IncludeIndex } from './files/includeIndex';
import { IncludeStore } from './files/includeStore';
import { Reach } from './files/reach';
import { InstrumentDocument } from './instrumentDocument';
import type { Measurements } from './measuring/measurements';
import { NotationFinder } from './notations/notationFinder';
import type {
  DocumentReading,
  Judgement,
  OpenDocument,
  ReadingInContext,
  SeveritiesFor,
} from './openDocument';
import { SampleStore } from './samples/sampleStore';

/** How long the first judgement waits for folders to be looked through, in milliseconds. */
const mostWait = 1500;

/**
 * The open documents with what was read from and found in them. Both are worked out when somebody asks, once for
 * a version, and dropped when the document, a file that it includes or a sample changes.
 */
export class InstrumentDocuments {
  readonly files: Files;
  readonly samples: SampleStore;
  readonly includes: IncludeStore;
  readonly index: IncludeIndex;
  readonly notations: NotationFinder;
  readonly severitiesFor: SeveritiesFor;
  readonly #byUri = new Map<string, InstrumentDocument>();
  readonly #byPath = new Map<string, InstrumentDocument>();
  /** Instruments that are not open, by path, in whose context open documents are judged. */
  readonly #mains = new Map<string, InstrumentDocument>();
  readonly #onDropped: (uris: readonly string[]) => void;
  #folders: readonly string[] = [];
  #includeFolders: readonly string[] = [];
  #indexing: Promise<void> | undefined;
  #serial = 0;

  /**
   * `onDropped` is told of documents whose findings have to be worked out anew although their own text is the same,
   * `warn` of files of settings that make no sense. With `measurements`, which go on in the background, findings tell
   * what was measured by then; see {@link measured}.
   */
  constructor(
    files: Files,
    severitiesFor: SeveritiesFor,
    onDropped: (uris: readonly string[]) => void,
    warn: (message: string) => void = () => {},
    measurements?: Measurements,
  ) {
    this.files = files;
    this.samples = new SampleStore(files, measurements && { measures: measurements });
    this.includes = new IncludeStore(files, (path) => this.#byPath.get(path)?.text);
    this.index = new IncludeIndex(files, this.includes);
    this.notations = new NotationFinder(files, this.samples, warn);
    this.severitiesFor = severitiesFor;
    this.#onDropped = onDropped;
  }

  /** Says that a document was opened, or that its text is another. */
  changed(document: OpenDocument): void {
    const known = this.#byUri.get(document.uri);
    if (known?.document === document) known.dropReading();
    else {
      const added = new InstrumentDocument(this, document, undefined);
      this.#byUri.set(document.uri, added);
      if (document.path !== undefined) {
        this.#byPath.set(document.path, added);
        this.#mains.get(document.path)?.leave();
        this.#mains.delete(document.path);
      }
    }
    this.#dropAround(document);
  }

  /** Says that a document is not open any more; its file counts from now on. */
  closed(uri: string): void {
    const known = this.#byUri.get(uri);
    if (!known) return;
    this.#byUri.delete(uri);
    known.leave();
    const { path } = known.document;
    if (path === undefined) return;
    this.#byPath.delete(path);
    this.includes.forget(path);
    this.index.forget(path);
    this.#indexing = undefined;
    this.#dropAround(known.document);
    if (this.#byUri.size > 0) return;
    for (const main of this.#mains.values()) main.leave();
    this.#mains.clear();
  }

  /** The folder in which what belongs to many instruments is saved: the open one around a file, else the file's own. */
  saveFolder(path: string | undefined): string | undefined {
    if (path === undefined) return undefined;
    return this.#folders.find((folder) => path.startsWith(`${folder}/`)) ?? folderOf(path);
  }

  /** Sets the folders in which instruments are looked for that include others. */
  setFolders(folders: readonly string[]): void {
    this.#folders = folders;
    this.#setReach();
    this.index.setFolders(folders);
    this.#indexing = undefined;
  }

  /** Sets the folders that instruments may include from although they lie elsewhere. */
  setIncludeFolders(folders: readonly string[]): void {
    if (folders.join('\n') === this.#includeFolders.join('\n')) return;
    this.#includeFolders = folders;
    this.readAgain();
  }

  /** How far the paths of instruments lead now. */
  get reach(): Reach {
    return new Reach(this.files, this.#folders, this.#includeFolders);
  }

  /** Says that all may read otherwise than before. */
  readAgain(): void {
    this.#setReach();
    this.notations.forgetAll();
    this.index.lookAgain();
    this.#indexing = undefined;
    for (const one of this.#all()) one.dropReading();
    this.#onDropped([...this.#byUri.keys()]);
  }

  #setReach(): void {
    this.includes.setReach(this.reach);
  }

  /** Says that files or folders came, went or changed on the disk. */
  filesChanged(paths: readonly string[]): void {
    for (const path of paths) {
      this.samples.forget(path);
      this.includes.forget(path);
      this.index.forget(path);
      this.notations.forget(path);
    }
    this.#indexing = undefined;
    for (const one of this.#all()) {
      const isRead =
        one.hasVocabulary || paths.some((path) => one.includes(path) || (one.isClosed && one.path === path));
      if (isRead) one.dropReading();
      else one.dropJudgement();
    }
    this.#onDropped([...this.#byUri.keys()]);
  }

  /**
   * Looks whether the folders of samples hold what they did, since who watches files does not always tell of a folder that
   * was renamed or put in another's place. Answers the paths at which something else stands.
   */
  async lookAgain(): Promise<string[]> {
    const others = await this.samples.folders.lookAgain();
    if (others.length > 0) this.filesChanged(others);
    return others;
  }

  /** Forgets all that is known of files on the disk, so that all is read and checked again. */
  forgetFiles(): void {
    this.samples.forgetAll();
    this.includes.forgetAll();
    this.readAgain();
  }

  /** Says that files or folders are at other paths now; both the old and the new ones are told. */
  filesMoved(paths: readonly string[]): void {
    this.index.lookAgain();
    this.filesChanged(paths);
  }

  /** Says that severities changed. */
  settingsChanged(): void {
    for (const one of this.#all()) one.dropJudgement();
    this.#onDropped([...this.#byUri.keys()]);
  }

  /** Says that more was measured of what the findings of documents, the owners, lacked. */
  measured(owners: ReadonlySet<unknown>): void {
    const uris: string[] = [];
    for (const one of this.#all()) {
      if (owners.has(one)) one.dropJudgement();
      else if (!one.isJudgedThroughMain) continue;
      if (!one.isClosed) uris.push(one.document.uri);
    }
    this.#onDropped(uris);
  }

  /** What was read from the latest version of a document; `undefined` for one that holds no instrument. */
  async reading(uri: string): Promise<DocumentReading | undefined> {
    return this.#byUri.get(uri)?.reading();
  }

  /** What was read from a document, and from the instrument that it belongs to. */
  async readingInContext(uri: string): Promise<ReadingInContext | undefined> {
    const document = this.#byUri.get(uri);
    const own = await document?.reading();
    if (!document || !own) return undefined;
    const main = document.path === undefined ? undefined : await this.mainOf(document.path);
    const whole = main === document ? own : await main?.reading();
    const source = whole?.instrument.sources.findIndex(({ path }) => path === document.path) ?? -1;
    return whole && source >= 0 ? { own, whole, source } : { own, whole: own, source: 0 };
  }

  /** What the checks say of the latest version of a document; `undefined` for one that holds no instrument. */
  async judgement(uri: string): Promise<Judgement | undefined> {
    return this.#byUri.get(uri)?.judgement();
  }

  /** The open document of a path. */
  openDocument(path: string): OpenDocument | undefined {
    return this.#byPath.get(path)?.document;
  }

  /** A number that was not given before. */
  nextSerial(): number {
    return ++this.#serial;
  }

  /** The instrument in whose context a document is judged; `undefined` for one that stands by itself. */
  async mainOf(path: string): Promise<InstrumentDocument | undefined> {
    if (!this.index.isUpToDate) await this.#waitForIndex();
    const main = this.index.mainOf(path, (one) => this.#byPath.has(one));
    if (main === undefined) return undefined;
    return this.#byPath.get(main) ?? this.#mains.get(main) ?? this.#addMain(main);
  }

  async #addMain(path: string): Promise<InstrumentDocument | undefined> {
    const text = await this.closedText(path);
    if (text === undefined) return undefined;
    const known = this.#byPath.get(path) ?? this.#mains.get(path);
    if (known) return known;
    const languageId = isXmlFileName(path) ? 'xml' : '';
    const closed = { uri: '', path, languageId, version: 0, getText: () => '' };
    const added = new InstrumentDocument(this, closed, path);
    this.#mains.set(path, added);
    return added;
  }

  /** The text of a file that is not open. */
  async closedText(path: string): Promise<string | undefined> {
    for (let round = 0; round < 3; round++) {
      const known = this.includes.get(path);
      if (known.kind !== 'pending') return known.kind === 'text' ? known.text : undefined;
      await this.includes.loadWanted();
    }
    return undefined;
  }

  async #waitForIndex(): Promise<void> {
    if (!this.#indexing) {
      const indexing = this.index.update();
      this.#indexing = indexing;
      let isLate = false;
      const late = new Promise<void>((resolve) => {
        const timer = setTimeout(() => {
          isLate = true;
          resolve();
        }, mostWait);
        const done = () => {
          clearTimeout(timer);
          resolve();
          if (isLate) this.settingsChanged();
        };
        indexing.then(done, done);
      });
      this.#indexing = late;
    }
    await this.#indexing;
  }

  /** Drops what depends on the text of a document. */
  #dropAround(document: OpenDocument): void {
    const dropped: string[] = [];
    for (const one of this.#all()) {
      if (one.document === document) continue;
      if (document.path !== undefined && one.includes(document.path)) one.dropReading();
      else if (one.isJudgedThroughMain) one.dropJudgement();
      else continue;
      if (!one.isClosed) dropped.push(one.document.uri);
    }
    if (dropped.length > 0) this.#onDropped(dropped);
  }

  *#all(): Iterable<InstrumentDocument> {
    yield* this.#byUri.values();
    yield* this.#mains.values();
  }
}
