import type { SeveritySettings } from '../checks/rule';
import type { Finding } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Notation } from '../model/notation';
import type { VocabularyInForce } from './notations/notationFinder';

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
