import type { WorkDoneProgressParams } from 'vscode-languageserver-protocol';
import { RequestType } from 'vscode-languageserver-protocol';
import type { ConvertRefusal } from './conversionRequests';

export interface RecordingsParams extends WorkDoneProgressParams {
  /** The folder of the recordings; all below it count. */
  folderUri: string;
}

export interface RecordingsResult {
  /** SFZ, whose sample paths start from the folder. */
  text: string;
  regionCount: number;
  noteCount: number;
  /** What was decided and left out, as a page of Markdown. */
  page: string;
}

/** Makes an instrument of the recordings in a folder alone. */
export const RecordingsRequest = {
  type: new RequestType<RecordingsParams, RecordingsResult | ConvertRefusal, void>('zonewright/recordings'),
} as const;
