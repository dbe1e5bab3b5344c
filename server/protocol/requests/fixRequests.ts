import type { TextEdit } from 'vscode-languageserver-protocol';
import { RequestType } from 'vscode-languageserver-protocol';
import type { FixKind } from '../../features/quickFixes';

export interface FolderFixesParams {
  /** The URI of the folder; all open folders where absent. */
  folder?: string;
  /** Which fixes; all safe ones where absent. */
  kind?: FixKind;
}

/** A file with what fixes would change in it and with what is found in it. */
export interface FileFixes {
  uri: string;
  /** From the folder, with `/`. */
  name: string;
  edits: TextEdit[];
  /** What is settled, with lines from 1. */
  fixes: { code: string; title: string; line: number }[];
  /** What is found in the file now, by code, with the line of the first, from 1. */
  findings: { code: string; count: number; line: number }[];
  /** Fixes that touch what others change, and so have to wait. */
  left: number;
}

/** What fixes would change in the instruments of a folder. Nothing is changed by asking. */
export const FolderFixesRequest = {
  type: new RequestType<FolderFixesParams, FileFixes[], void>('zonewright/folderFixes'),
} as const;
