import { RequestType } from 'vscode-languageserver-protocol';

export interface SampleReportParams {
  uri: string;
}

export interface SampleReportResult {
  /** A page of HTML that needs nothing besides itself; absent where there is no report. */
  html?: string;
  /** The table of samples as comma-separated values (RFC 4180); comes with the page. */
  csv?: string;
  /** Why there is none, as a sentence. */
  reason?: string;
}

/**
 * Asks for a report on the samples of a document's instrument: what is known of each, and the tuning over the keys. It
 * comes when all of them are measured.
 */
export const SampleReportRequest = {
  type: new RequestType<SampleReportParams, SampleReportResult, void>('zonewright/sampleReport'),
} as const;
