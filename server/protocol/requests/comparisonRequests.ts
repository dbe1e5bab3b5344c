import type { Range } from 'vscode-languageserver-protocol';
import { RequestType } from 'vscode-languageserver-protocol';

export interface CompareParams {
  /** The documents that are compared, both open. */
  uri: string;
  otherUri: string;
}

export interface CompareRecordingParams {
  /** The document that is compared, and an audio file: a recording of the original that plays its sweep. */
  uri: string;
  recordingUri: string;
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

/**
 * Asks whether the instrument of a document sounds like a recording of the original. What was played is the MIDI file of the
 * same name beside the recording where there is one, else the sweep that `zonewright sweep` writes for the instrument.
 */
export const CompareRecordingRequest = {
  type: new RequestType<CompareRecordingParams, CompareResult, void>('zonewright/compareRecording'),
} as const;
