/** What stands at a path; a pipe, a socket or a device is special: opening one can wait for ever. */
export type FileKind = 'file' | 'folder' | 'special';

/** What is known of a file or folder without opening it. */
export interface FileStat {
  kind: FileKind;
  /** Bytes. */
  size: number;
  /** Last change, in milliseconds since 1970. */
  modified: number;
}

/** One name in a folder. */
export interface FolderEntry {
  name: string;
  kind: FileKind;
  /** Said of a link, whose kind is that of what it leads to. */
  isLink?: true;
}

/**
 * Why something that is there cannot be reached: this user may not, the open folder is not trusted, or it is a pipe, a socket
 * or a device.
 */
export type Refusal = 'permission' | 'trust' | 'special';

/**
 * The only way in which the core reaches files, so that it runs unchanged on a desktop, in a browser-hosted
 * editor's worker and in tests. Paths use `/`. A path that cannot be reached answers `undefined`, never an exception.
 */
export interface Files {
  stat(path: string): Promise<FileStat | undefined>;
  /** As {@link stat} for many paths, in their order; missing where a host has no quicker way to do it. */
  stats?(paths: readonly string[]): Promise<(FileStat | undefined)[]>;
  /** The names in a folder, in no special order. */
  list(folder: string): Promise<FolderEntry[] | undefined>;
  /**
   * Opens a file for reads of byte ranges; the caller closes it. Never waits for the other end of a pipe: what is special is
   * not opened.
   */
  open(path: string): Promise<FileReader | undefined>;
  /** Whether a path may be looked at now, as far as the path alone tells; missing where each may. */
  admits?(path: string): boolean;
  /** Where a path ends when all links in it are followed; missing where a host has no links or does not tell. */
  realPath?(path: string): Promise<string | undefined>;
  /** Why a path could not be reached; `undefined` where there is nothing or no reason is known. Missing where a host gives none. */
  refusal?(path: string): Promise<Refusal | undefined>;
}

/** An open file. */
export interface FileReader {
  /** Bytes in the file. */
  readonly size: number;
  /** Its last change, in milliseconds since 1970, where opening it told that. */
  readonly modified?: number;
  /** Up to `length` bytes from `start`; fewer at the end of the file. */
  read(start: number, length: number): Promise<Uint8Array>;
  close(): Promise<void>;
}
