import type { Range, TextEdit, WorkDoneProgressParams } from 'vscode-languageserver-protocol';
import { RequestType } from 'vscode-languageserver-protocol';
import type { NoteKind } from '../../model/notes';
import type { ColumnScale } from '../../table/columns/columnReading';
import type { Suggestion } from '../../table/zones/groups/suggestions';
import type { ColumnMeaning } from '../../trade/meaning';

/** The note name that a table gives to key 60; `auto`: found by evidence. */
export type MiddleCChoice = 'auto' | 'C3' | 'C4' | 'C5';

/** What a person has corrected in the reading of a table; it holds for other tables with the same headings. */
export interface TableCorrections {
  /** Over what the settings say. */
  middleC?: MiddleCChoice;
  /** Meanings of columns, by position from 0. */
  columns?: [column: number, meaning: ColumnMeaning][];
  /** How the numbers of columns are counted, by position from 0; see {@link PreviewColumn.scale}. */
  scales?: [column: number, scale: string][];
}

/** What a person has decided about one table. */
export interface TableDecisions extends TableCorrections {
  /** Kinds of the suggested groupings that are taken. */
  groupings?: Suggestion['kind'][];
  /** Files for sample names of the table, as paths from the document's folder. */
  samples?: [name: string, path: string][];
  /** Whether regions with the same samples are changed rather than written again. */
  update?: boolean;
  /** Whether an update takes regions out that the table has no row for. */
  takeOut?: boolean;
}

export interface ConvertTableParams extends TableDecisions, WorkDoneProgressParams {
  /** The document that the regions go into. */
  uri: string;
  /** What the regions take the place of; empty for a cursor. */
  range: Range;
  /** The copied zone table. */
  text: string;
}

/** A note on a table; its line counts from 1. */
export interface TableNote {
  kind: NoteKind;
  message: string;
  line: number;
}

export interface ConvertTableResult {
  /** What to write in the place of the range; absent where there is a problem or the change is not confined to the range. */
  insertText?: string;
  /** The whole change, the replacing of the range included; absent where there is a problem, or {@link insertText} is all of it. */
  edits?: TextEdit[];
  /** Lines are those of the table. */
  notes: TableNote[];
  regionCount: number;
  /** How many rows have a region with the same sample in the document. */
  matchCount: number;
  /** Of an update: how many regions change, stay as they are, and are added. */
  changedCount: number;
  unchangedCount: number;
  addedCount: number;
  /** Of an update: how many regions of the document the table has no row for. They stay unless `takeOut` says otherwise. */
  goneCount: number;
  /** The headings of the table in one word, by which corrections are remembered; empty where it has none. */
  headings: string;
  /** Why the text was not taken for a table, as a sentence. */
  problem?: string;
}

/** Makes regions of a copied zone table, in the notation and style of a document; `null` where the document holds no instrument. */
export const ConvertTableRequest = {
  type: new RequestType<ConvertTableParams, ConvertTableResult | null, void>('zonewright/convertTable'),
} as const;

/** Where the regions of a previewed table would go: into a document, or into a new one for a folder. */
export type PreviewTarget =
  | { kind: 'document'; uri: string; range: Range }
  | { kind: 'new'; format: 'sfz' | 'xml'; folderUri?: string };

export interface PreviewTableParams extends TableDecisions, WorkDoneProgressParams {
  target: PreviewTarget;
  text: string;
}

/** A column of a table as it was understood. */
export interface PreviewColumn {
  index: number;
  /** Empty where there is none. */
  heading: string;
  meaning: ColumnMeaning;
  /** 0..1 */
  confidence: number;
  /** Why, in sentences. */
  evidence: string[];
  /** What stands in a few of its cells. */
  examples: string[];
  /** How its numbers are counted, what else they could be, and why; absent where there is nothing to choose. */
  scale?: ColumnScale;
}

/** A row of a table with the notes that are about it, as positions in {@link PreviewTableResult.notes}. */
export interface PreviewRow {
  /** From 1. */
  line: number;
  cells: string[];
  isHeading: boolean;
  notes: number[];
}

/** A way to group regions that the table does not state itself. */
export interface PreviewGrouping {
  kind: Suggestion['kind'];
  message: string;
}

/** A sample name that no single file bears exactly. */
export interface PreviewSample {
  name: string;
  choices: string[];
  /** The one of {@link choices} that is written; absent where the name is kept. */
  taken?: string;
}

export interface PreviewTableResult extends Omit<ConvertTableResult, 'insertText'> {
  columns: PreviewColumn[];
  /** The first rows, and how many there are in all. */
  rows: PreviewRow[];
  rowCount: number;
  groupings: PreviewGrouping[];
  samples: PreviewSample[];
  /** The convention by which note names were read; absent where the table has none. */
  middleC?: Exclude<MiddleCChoice, 'auto'>;
  /**
   * For a new document: the folder, from the one that was said, in which the samples that were found lie together, without a
   * folder that holds samples alone; absent where it is that folder itself.
   */
  home?: string;
  /** The text that is written, as much of it as a person looks through; of an update, the lines that change, as they become. */
  markup: string;
  /** How many lines more there are. */
  moreLines: number;
}

/** Tells how a copied zone table is understood and what would be written; `null` where the document holds no instrument. */
export const PreviewTableRequest = {
  type: new RequestType<PreviewTableParams, PreviewTableResult | null, void>('zonewright/previewTable'),
} as const;

export interface LooksLikeTableParams {
  text: string;
}

/** Asks whether a text is likely to be a copied zone table. Quick, so that it can be asked at every paste. */
export const LooksLikeTableRequest = {
  type: new RequestType<LooksLikeTableParams, boolean, void>('zonewright/looksLikeTable'),
} as const;
