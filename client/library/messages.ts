import type { LibraryRow } from '../../server/library/report/libraryRow';

/** A library as the page shows it. */
export interface ShownLibrary {
  /** The URI of its file, by which it is named. */
  uri: string;
  title: string;
  rows: LibraryRow[];
  problems: string[];
}

/** What the host tells the page. */
export type LibraryToPage =
  | { type: 'libraries'; libraries: ShownLibrary[] }
  /** How far a build is; `all` is 0 when it has ended. */
  | { type: 'progress'; uri: string; done: number; all: number };

/** What can be opened of an instrument. */
export type LibraryPlace = 'text' | 'map' | 'sound' | 'notes' | 'source';

/** What the page tells its host. */
export type LibraryFromPage =
  | { type: 'open'; uri: string; fileName: string; place: LibraryPlace }
  | { type: 'build'; uri: string }
  | { type: 'file'; uri: string };
