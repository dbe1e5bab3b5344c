import type { Severity } from '../../model/finding';
import type { LineColumn } from '../../model/text/source';

/** A finding with its place in lines and columns, counted from 1. */
export interface PlacedFinding {
  code: string;
  severity: Severity;
  message: string;
  start: LineColumn;
  end: LineColumn;
}

/** A file with what was found in it, in the order of its text. */
export interface CheckedFile {
  /** Absolute path. */
  path: string;
  findings: PlacedFinding[];
}

/** The order of findings in a text. */
export function inText({ start: a }: PlacedFinding, { start: b }: PlacedFinding): number {
  return a.line - b.line || a.column - b.column;
}
