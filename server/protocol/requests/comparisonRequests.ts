import type { Range } from 'vscode-languageserver-protocol';
import { RequestType } from 'vscode-languageserver-protocol';

export interface CompareParams {
  /** The documents that are compared, both open. */
  uri: string;
  otherUri: string;
}

/** A place in a text that makes a difference. */
export interface ComparedPlace {
  uri: string;
  range: Range;
  message: string;
}

export interface CompareResult {
  /** A page that needs nothing besides itself; absent where nothing could be compared. */
  html?: string;
  /** What it says as a whole, in one sentence. */
  summary?: string;
  places?: ComparedPlace[];
  /** Why nothing could be compared, as a sentence. */
  reason?: string;
}

/** Asks whether the instruments of two documents sound alike, where they do not and why. It comes when all is measured. */
export const CompareRequest = {
  type: new RequestType<CompareParams, CompareResult, void>('zonewright/compare'),
} as const;
