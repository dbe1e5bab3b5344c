import type { Instrument } from '../model/instrument';
import type { Notation } from '../model/notation';
import { folderOf } from '../model/paths';
import type { SampleLookup } from '../model/samples';
import { checkFetching, readInstrument } from './analyse';
import type { IncludeIndex } from './files/includeIndex';
import { includedPaths } from './files/includeIndex';
import type { IncludeStore } from './files/includeStore';
import type { FoundNotation, NotationFinder } from './notations/notationFinder';
import { vocabularyFindings } from './notations/vocabularyFindings';
import type { DocumentReading, Judgement, OpenDocument, SeveritiesFor } from './openDocument';
import type { SampleStore } from './samples/sampleStore';
import { takeSteps } from './takeSteps';

/** Nothing is known of the samples of a document that is no file. */
const unknownSamples: SampleLookup = { state: () => ({ kind: 'pending' }), nearest: () => [] };

/** What a document needs to know of the others and of what is around them. */
export interface DocumentsAround {
  readonly samples: SampleStore;
  readonly includes: IncludeStore;
  readonly index: IncludeIndex;
  readonly notations: NotationFinder;
  readonly severitiesFor: SeveritiesFor;
  /** The folder in which what belongs to many instruments is saved. */
  saveFolder(path: string | undefined): string | undefined;
  /** The instrument in whose context a document is judged; `undefined` for one that stands by itself. */
  mainOf(path: string): Promise<InstrumentDocument | undefined>;
  /** The text of a file that is not open. */
  closedText(path: string): Promise<string | undefined>;
  /** A number that was not given before. */
  nextSerial(): number;
}

/** Ends a reading from which nothing is to come. */
class NotWanted extends Error {}

/** One document with what was worked out from its present text. */
export class InstrumentDocument {
  readonly document: OpenDocument;
  /** Whether it is not open, only read because another document is judged in its context. */
  readonly isClosed: boolean;
  isJudgedThroughMain = false;
  /** Whether files around say how the text is read. */
  hasVocabulary = false;
  readonly #around: DocumentsAround;
  #reading: Promise<DocumentReading | undefined> | undefined;
  #judgement: Promise<Judgement | undefined> | undefined;
  /** What was read last, by which the next version can be read sooner. */
  #last: { notation: Notation; instrument: Instrument } | undefined;
  #included: ReadonlySet<string> = new Set();
  #isLeft = false;

  constructor(around: DocumentsAround, document: OpenDocument, closedPath: string | undefined) {
    this.#around = around;
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
    this.#around.samples.measurements?.release(this);
  }

  async reading(): Promise<DocumentReading | undefined> {
    for (;;) {
      if (!this.#reading) {
        const begun: { promise?: Promise<DocumentReading | undefined> } = {};
        begun.promise = this.#read(() => this.#reading !== begun.promise);
        this.#reading = begun.promise;
      }
      const asked = this.#reading;
      const reading = await asked.catch((error: unknown) => this.#dropFailed(asked, error));
      if (asked === this.#reading) return reading;
    }
  }

  /** What the checks say of the document, in the context of an instrument that includes it if there is one. */
  async judgement(): Promise<Judgement | undefined> {
    const { path } = this;
    const main = path === undefined ? undefined : await this.#around.mainOf(path);
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

  /** `isStopped` says that the text is another by now: nothing comes of the reading then. */
  async #read(isStopped: () => boolean): Promise<DocumentReading | undefined> {
    const { document } = this;
    const { version, path } = document;
    const text = this.isClosed ? await this.#around.closedText(path as string) : document.getText();
    if (text === undefined) return undefined;
    const found = await this.#around.notations.find({ path, text, languageId: document.languageId });
    this.hasVocabulary = !found || found.vocabulary !== undefined;
    if (!found) {
      this.#setIncluded(new Set());
      return undefined;
    }
    const { notation, vocabulary } = found;
    const instrument = await this.#readText(text, found, isStopped);
    if (!instrument) return undefined;
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

  async #readText(
    text: string,
    found: FoundNotation,
    isStopped: () => boolean,
  ): Promise<Instrument | undefined> {
    const { path } = this;
    const { notation } = found;
    const previous = this.#last?.notation === notation ? this.#last.instrument : undefined;
    const stop = () => {
      if (isStopped()) throw new NotWanted();
    };
    try {
      if (path === undefined)
        return await takeSteps(notation.readInSteps(text, { path: '', previous }), stop);
      const source = { path, text, notation, previous, ...this.#around.notations.readingOf(found) };
      return await readInstrument(source, this.#around.includes, stop);
    } catch (error) {
      if (error instanceof NotWanted) return undefined;
      throw error;
    }
  }

  #setIncluded(included: ReadonlySet<string>): void {
    if (this.#included.size === 0 && included.size === 0) return;
    this.#included = included;
    if (this.path !== undefined) this.#around.index.note(this.path, included);
  }

  async #judge(isStopped: () => boolean): Promise<Judgement | undefined> {
    const reading = await this.reading();
    if (!reading) return undefined;
    const { notation, instrument, folder, vocabulary } = reading;
    const { samples } = this.#around;
    const severities = await this.#around.severitiesFor({
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
      findings.push(...vocabularyFindings(vocabulary, this.#around.saveFolder(this.path), severities));
    return { serial: this.#around.nextSerial(), notation, instrument, findings, source: 0 };
  }
}
