import type { Severity } from '../../model/finding';
import type { NoteKind } from '../../model/notes';
import type { InstrumentFacts } from '../libraryFile';
import type { SourceKind } from './readSource';

/** Changes when a record holds something else than before, so that older ones are not taken for it. */
export const recordVersion = 2;

/** A finding in what was built. */
export interface RecordFinding {
  code: string;
  severity: Severity;
  message: string;
  line: number;
  column: number;
  /** Where it is: the path of the text, from the output folder. */
  file: string;
}

/** What was not carried over exactly: notes that say the same as one. */
export interface RecordNote {
  kind: NoteKind;
  message: string;
  count: number;
  /** The lines of the source, as `3–5, 9`. */
  lines: string;
}

/** What an instrument is like. */
export interface InstrumentFigures {
  regions: number;
  groups: number;
  /** The lowest and highest key that a region answers; missing where none does. */
  keys?: [low: number, high: number];
  /** The most velocity ranges that any key has. */
  layers: number;
  /** Different sample files. */
  samples: number;
  missing: number;
  /** Of a small drawing of the map: low key, high key, low velocity, high velocity of each shape. */
  shapes: [number, number, number, number][];
}

/** What was measured in the samples, where that was asked for. */
export interface InstrumentMeasures {
  /** How many samples were measured. */
  samples: number;
  /** The mean distance of the pitch from what root key and tuning claim, and the greatest, in cents. */
  meanCents?: number;
  greatestCents?: number;
  /** The median of the loudness of its samples, in LUFS. */
  loudness?: number;
}

/** How a text that was written sounds beside its source. */
export interface InstrumentProof {
  target: string;
  /** `noted`: it differs only where a note on the conversion says so. */
  verdict: 'alike' | 'noted' | 'differs';
  /** Notes that were played on both. */
  notes: number;
  /** Notes that differ by more than −90 dB for no reason that is noted, and those with one. */
  differing: number;
  explained: number;
  /** The greatest difference in dB to full scale; `null` where there is none at all. */
  worstDb: number | null;
  /** The note that differs most, with a sentence on the first cause. */
  worst?: { key: number; velocity: number; cause: string };
  /** Opcodes that are not rendered, of which nothing is said. */
  notRendered: string[];
}

/** A file that was written: its path from the output folder, bytes and sum. */
export interface RecordOutput {
  path: string;
  target: string;
  size: number;
  sum: string;
}

/**
 * All that a build tells of one instrument, for reports: written beside what was built, the same bytes for the same input on
 * every machine. Paths are relative: that of the source to the library file's folder, those of outputs to the output folder.
 */
export interface InstrumentRecord {
  version: number;
  /** The program's version. */
  program: string;
  name: string;
  fileName: string;
  source: string;
  sourceKind?: SourceKind;
  state: 'built' | 'failed';
  /** Why it failed, or which of its targets did. */
  message: string | null;
  facts: InstrumentFacts;
  outputs: RecordOutput[];
  figures?: InstrumentFigures;
  measures?: InstrumentMeasures;
  /** One for each text that is in no template, where that was asked for. */
  proofs?: InstrumentProof[];
  totals: Record<Severity, number>;
  findings: RecordFinding[];
  /** How many values were carried over exactly. */
  kept: number;
  noteCounts: Record<NoteKind, number>;
  notes: RecordNote[];
  doubts: string[];
}

/** The text of a record. */
export function recordText(record: InstrumentRecord): string {
  return `${JSON.stringify(record, undefined, 1)}\n`;
}

/** Reads the text of a record; `undefined` for one of another version, or that came to harm. */
export function parseRecord(text: string): InstrumentRecord | undefined {
  try {
    const record = JSON.parse(text) as Partial<InstrumentRecord> | null;
    return record?.version === recordVersion ? (record as InstrumentRecord) : undefined;
  } catch {
    return undefined;
  }
}

/** No finding of any severity. */
export function noFindings(): Record<Severity, number> {
  return { error: 0, warning: 0, information: 0, hint: 0 };
}

/** No note of any kind. */
export function noNotes(): Record<NoteKind, number> {
  return { assumed: 0, approximated: 0, dropped: 0, ignored: 0 };
}
