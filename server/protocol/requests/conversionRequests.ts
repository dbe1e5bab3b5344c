import type { Range } from 'vscode-languageserver-protocol';
import { RequestType } from 'vscode-languageserver-protocol';
import type { NoteKind } from '../../model/notes';
import type { LineNote } from '../../model/writing/lineNotes';

/** The text at a URI that takes groups and regions in the place of its examples, and what is known of the instrument by name. */
export interface TemplateTarget {
  templateUri: string;
  facts: Record<string, string>;
}

export interface ConvertParams {
  /** The document with the instrument, or that a table is for. */
  uri: string;
  /** A copied zone table that is converted instead; its samples are looked up in the document's folder. */
  table?: string;
  /** A notation, the vocabulary that the file at a URI holds, or a template. */
  to: 'sfz' | 'xml' | { vocabularyUri: string } | TemplateTarget;
  /** Whether variables and included files are kept as such, where the notation can; where nothing is said, they are. */
  directives?: 'keep' | 'inline';
  /** The folder that the text is for; where nothing is said, the document's own. */
  folderUri?: string;
}

/** A stretch of the converted text that a note is about. */
export interface ConversionMark {
  range: Range;
  kind: NoteKind;
  message: string;
}

export interface ConvertResult {
  text: string;
  /** How many values were carried over exactly. */
  kept: number;
  /** Lines are those of the document. */
  notes: LineNote[];
  /** The notes in the converted text; those without a place in it stand at its start, alike ones in one. */
  marks: ConversionMark[];
  /** The notes as a page of Markdown. */
  page: string;
  /** What the text is written in. */
  format: 'sfz' | 'xml' | 'vocabulary';
  /** Facts that a template has a place for and that are not known; they stay marked. */
  missingFacts: string[];
  /** Whether sample paths start from a folder, so that they lead to the files from there alone. */
  hasRelativePaths: boolean;
}

/** Why nothing was converted, as a sentence. */
export interface ConvertRefusal {
  problem: string;
}

/** Writes a document's instrument in another notation and accounts for every value of it. */
export const ConvertRequest = {
  type: new RequestType<ConvertParams, ConvertResult | ConvertRefusal, void>('zonewright/convert'),
} as const;

export interface VocabulariesParams {
  /** The document that is to be converted. */
  uri: string;
}

/** A file that is named like one with a vocabulary. */
export interface VocabularyFile {
  uri: string;
  /** Its path from the open folder that it is in, else its whole path. */
  path: string;
}

/** The vocabulary files around a document and in the open folders. */
export const VocabulariesRequest = {
  type: new RequestType<VocabulariesParams, VocabularyFile[], void>('zonewright/vocabularies'),
} as const;
