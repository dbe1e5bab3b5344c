import type { SeveritySettings } from '../checks/rule';
import { isXmlFileName } from '../model/fileNames';
import type { Files } from '../model/files';
import type { Finding } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Notation } from '../model/notation';
import { folderOf } from '../model/paths';
import type { SampleLookup } from '../model/samples';
import { checkFetching, readInstrument } from './analyse';
import { IncludeIndex, includedPaths } from './files/includeIndex';
import { IncludeStore } from './files/includeStore';
import { Reach } from './files/reach';
import type { Measurements } from './measuring/measurements';
import type { VocabularyInForce } from './notations/notationFinder';
import { NotationFinder } from './notations/notationFinder';
import { vocabularyFindings } from './notations/vocabularyFindings';
import { SampleStore } from './samples/sampleStore';

/** A document as an editor holds it. */
export interface OpenDocument {
  readonly uri: string;
  /** Absolute path with `/`; `undefined` for a document that is no file. */
  readonly path: string | undefined;
  readonly languageId: string;
  readonly version: number;
  getText(): string;
}

/** An instrument as read from a version of a document. */
export interface DocumentReading {
  document: OpenDocument;
  /** The version that was read. */
  version: number;
  notation: Notation;
  instrument: Instrument;
  /** The folder that paths in the instrument lead from; `undefined` for a document that is no file. */
  folder: string | undefined;
  /** How the XML is read where it is not in our own notation. */
  vocabulary?: VocabularyInForce;
}

/** A document in the context of the instrument that it belongs to. */
export interface ReadingInContext {
  /** What was read from the document by itself. */
  own: DocumentReading;
  /** What was read from an instrument that includes it; the same as {@link own} where there is none. */
  whole: DocumentReading;
  /** The position of the document's file in the sources of the whole instrument. */
  source: number;
}

/** What the checks say of a document. */
export interface Judgement {
  /** Different for every judgement of a process. */
  serial: number;
  notation: Notation;
  /** The instrument that was checked: that of the document, or one that includes it. */
  instrument: Instrument;
  findings: readonly Finding[];
  /** The position of the document's file in the instrument's sources. */
  source: number;
}

/** The severities in force for a document. */
export type SeveritiesFor = (document: {
  uri: string | undefined;
  path: string | undefined;
}) => Promise<SeveritySettings>;

/** How long the first judgement waits for folders to be looked through, in milliseconds. */
const mostWait = 1500;

/** Nothing is known of the samples of a document that is no file. */
const unknownSamples: SampleLookup = { state: () => ({ kind: 'pending' }), nearest: () => [] };

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

/** One document with what was worked out from its present text. */
class InstrumentDocument {
  readonly document: OpenDocument;
  /** Whether it is not open, only read because another document is judged in its context. */
  readonly isClosed: boolean;
  isJudgedThroughMain = false;
  /** Whether files around say how the text is read. */
  hasVocabulary = false;
  readonly #documents: InstrumentDocuments;
  #reading: Promise<DocumentReading | undefined> | undefined;
  #judgement: Promise<Judgement | undefined> | undefined;
  /** What was read last, by which the next version can be read sooner. */
  #last: { notation: Notation; instrument: Instrument } | undefined;
  #included: ReadonlySet<string> = new Set();
  #isLeft = false;

  constructor(documents: InstrumentDocuments, document: OpenDocument, closedPath: string | undefined) {
    this.#documents = documents;
    this.document = document;
    this.isClosed = closedPath !== undefined;
  }

  get path(): string | undefined {
    return this.document.path;
  }

  get text(): string {
    return this.document.getText();
  }

  /** Whether the instrument includes a file, or one in a folder. */
  includes(path: string): boolean {
    if (this.#included.has(path)) return true;
    for (const one of this.#included) if (one.startsWith(`${path}/`)) return true;
    return false;
  }

  dropReading(): void {
    this.#reading = undefined;
    this.#judgement = undefined;
  }

  dropJudgement(): void {
    this.#judgement = undefined;
  }

  /** Says that the document is not looked at any more: what is measured for it need not be. */
  leave(): void {
    this.#isLeft = true;
    this.#documents.samples.measurements?.release(this);
  }

  async reading(): Promise<DocumentReading | undefined> {
    for (;;) {
      this.#reading ??= this.#read();
      const asked = this.#reading;
      const reading = await asked.catch((error: unknown) => this.#dropFailed(asked, error));
      if (asked === this.#reading) return reading;
    }
  }

  /** What the checks say of the document, in the context of an instrument that includes it if there is one. */
  async judgement(): Promise<Judgement | undefined> {
    const { path } = this;
    const main = path === undefined ? undefined : await this.#documents.mainOf(path);
    this.isJudgedThroughMain = main !== undefined && main !== this;
    if (main && main !== this) {
      const judgement = await main.ownJudgement();
      const source = judgement?.instrument.sources.findIndex((one) => one.path === path) ?? -1;
      if (judgement && source >= 0) return { ...judgement, source };
    }
    return this.ownJudgement();
  }

  /** What the checks say of the document by itself. */
  async ownJudgement(): Promise<Judgement | undefined> {
    for (;;) {
      if (!this.#judgement) {
        const judging: { promise?: Promise<Judgement | undefined> } = {};
        judging.promise = this.#judge(() => this.#judgement !== judging.promise);
        this.#judgement = judging.promise;
      }
      const asked = this.#judgement;
      const judgement = await asked.catch((error: unknown) => this.#dropFailed(asked, error));
      if (asked === this.#judgement) return judgement;
    }
  }

  /** What failed is tried again the next time. */
  #dropFailed(asked: Promise<unknown>, error: unknown): never {
    if (this.#reading === asked) this.#reading = undefined;
    if (this.#judgement === asked) this.#judgement = undefined;
    throw error;
  }

  async #read(): Promise<DocumentReading | undefined> {
    const { document } = this;
    const { version, path } = document;
    const text = this.isClosed ? await this.#documents.closedText(path as string) : document.getText();
    if (text === undefined) return undefined;
    const found = await this.#documents.notations.find({ path, text, languageId: document.languageId });
    this.hasVocabulary = !found || found.vocabulary !== undefined;
    if (!found) {
      this.#setIncluded(new Set());
      return undefined;
    }
    const { notation, vocabulary } = found;
    const previous = this.#last?.notation === notation ? this.#last.instrument : undefined;
    const instrument =
      path === undefined
        ? notation.read(text, { path: '', previous })
        : await readInstrument(
            { path, text, notation, previous, ...this.#documents.notations.readingOf(found) },
            this.#documents.includes,
          );
    this.#last = { notation, instrument };
    if (document.version === version && path !== undefined) this.#setIncluded(includedPaths(instrument));
    return {
      document,
      version,
      notation,
      instrument,
      folder: path === undefined ? undefined : folderOf(path),
      ...(vocabulary && { vocabulary }),
    };
  }

  #setIncluded(included: ReadonlySet<string>): void {
    if (this.#included.size === 0 && included.size === 0) return;
    this.#included = included;
    if (this.path !== undefined) this.#documents.index.note(this.path, included);
  }

  async #judge(isStopped: () => boolean): Promise<Judgement | undefined> {
    const reading = await this.reading();
    if (!reading) return undefined;
    const { notation, instrument, folder, vocabulary } = reading;
    const { samples } = this.#documents;
    const severities = await this.#documents.severitiesFor({
      uri: this.isClosed ? undefined : this.document.uri,
      path: this.path,
    });
    const lookup = folder === undefined ? unknownSamples : samples.lookup(folder);
    const context = { notation, instrument, samples: lookup };
    const findings = await checkFetching(
      context,
      samples,
      severities,
      isStopped,
      this.#isLeft ? undefined : this,
    );
    if (vocabulary)
      findings.push(...vocabularyFindings(vocabulary, this.#documents.saveFolder(this.path), severities));
    return { serial: this.#documents.nextSerial(), notation, instrument, findings, source: 0 };
  }
}
