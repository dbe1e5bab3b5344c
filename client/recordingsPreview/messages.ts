import type { RecordingsResult } from '../../server/protocol/requests/recordingsRequest';

/** What is shown of a folder: what was made of its recordings, less the page of notes, and what a person has decided. */
export interface ShownRecordings extends Omit<RecordingsResult, 'page'> {
  folder: string;
  format: 'sfz' | 'xml';
  /** Recordings that a person has left out. */
  leftOut: string[];
}

/** What the panel tells its page. */
export type RecordingsToPage = { type: 'recordings'; shown: ShownRecordings };

/** What the page tells its panel. */
export type RecordingsFromPage =
  /** A recording is to be left out, or to be taken in again. */
  | { type: 'take'; path: string; isTaken: boolean }
  | { type: 'format'; format: 'sfz' | 'xml' }
  | { type: 'write' }
  | { type: 'notes' };
