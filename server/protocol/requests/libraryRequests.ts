import { NotificationType, RequestType } from 'vscode-languageserver-protocol';
import type { LibraryRow } from '../../library/report/libraryRow';

/** A library of an open folder, as its builds have left it. */
export interface LibraryView {
  /** The URI of its file. */
  uri: string;
  title: string;
  rows: LibraryRow[];
  /** What makes no sense in its file, as sentences. */
  problems: string[];
  /** The URIs of its folder and of the folder that results go to, without a slash at the end. */
  folder: string;
  output: string;
}

/** Asks for the libraries of the open folders. */
export const LibrariesRequest = {
  type: new RequestType<null, LibraryView[], void>('zonewright/libraries'),
} as const;

export interface BuildLibraryParams {
  /** The URI of the library file. */
  uri: string;
}

/** How many were built, were current, and failed; or why nothing is built, as a sentence. */
export type BuildLibraryResult = { built: number; unchanged: number; failed: number } | { problem: string };

/** Builds a library, with the steps that its file asks for. Cancelling ends it after the instruments that are under way. */
export const BuildLibraryRequest = {
  type: new RequestType<BuildLibraryParams, BuildLibraryResult, void>('zonewright/buildLibrary'),
} as const;

export interface LibraryProgress {
  uri: string;
  done: number;
  all: number;
  /** The instrument that was done last. */
  name: string;
}

/** Tells how far a build is. */
export const LibraryProgressNotification = {
  type: new NotificationType<LibraryProgress>('zonewright/libraryProgress'),
} as const;
