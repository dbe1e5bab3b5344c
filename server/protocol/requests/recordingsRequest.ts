import type { WorkDoneProgressParams } from 'vscode-languageserver-protocol';
import { RequestType } from 'vscode-languageserver-protocol';
import type { NoteKind } from '../../model/notes';
import type { RecordingDecision } from '../../recordings/recordedInstrument';
import type { ConvertRefusal } from './conversionRequests';

export interface RecordingsParams extends WorkDoneProgressParams {
  /** The folder of the recordings; all below it count. */
  folderUri: string;
  format: 'sfz' | 'xml';
  /**
   * Recordings that a person has left out, by their paths from the folder. Missing where the folder is to be listened to anew;
   * else what was heard the last time counts.
   */
  leftOut?: readonly string[];
}

export interface RecordingsResult {
  /** The text of the instrument, whose sample paths start from the folder; empty where nothing is left to make one of. */
  text: string;
  regionCount: number;
  /** What became of each recording, those that a person has left out aside. */
  decisions: RecordingDecision[];
  /** What was decided for all of them. */
  notes: { kind: NoteKind; message: string }[];
  /** Audio files that cannot be read. */
  unreadable: string[];
  /** What was decided and left out, as a page of Markdown. */
  page: string;
}

/** Makes an instrument of the recordings in a folder alone. */
export const RecordingsRequest = {
  type: new RequestType<RecordingsParams, RecordingsResult | ConvertRefusal, void>('zonewright/recordings'),
} as const;
