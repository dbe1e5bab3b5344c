import { RequestType } from 'vscode-languageserver-protocol';
import type { FileStat, FolderEntry } from '../../model/files';

/** A file or folder, by the address that the two sides agreed on: a URI towards an editor. */
export interface FileParams {
  file: string;
}

/** A stretch of a file that was in a certain state when it was opened. */
export interface FileRangeParams extends FileParams {
  /** Bytes of the whole file, and its last change in milliseconds since 1970. */
  size: number;
  modified: number;
  /** Bytes, from 0. */
  start: number;
  length: number;
}

// These requests are made only where messages are copied as they are (HTML Standard, structured clone), so that bytes
// need not become text on their way.

/** What is known of a file or folder; `null` for one that cannot be reached. */
export const FileStatRequest = {
  type: new RequestType<FileParams, FileStat | null, void>('zonewright/fileStat'),
} as const;

/** The names in a folder; `null` for one that cannot be reached. */
export const FolderListRequest = {
  type: new RequestType<FileParams, FolderEntry[] | null, void>('zonewright/folderList'),
} as const;

/** The bytes of a stretch, fewer at the end of the file. An error where the file cannot be read. */
export const FileRangeRequest = {
  type: new RequestType<FileRangeParams, Uint8Array, void>('zonewright/fileRange'),
} as const;

/** The address of the script that measures samples in a worker. */
export const MeasureScriptRequest = {
  type: new RequestType<null, string, void>('zonewright/measureScript'),
} as const;
