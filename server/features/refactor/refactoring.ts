import type { Keeps } from '../../model/editing/editReach';
import type { TextEdit } from '../../model/finding';
import type { ReadDocument } from '../readDocument';

/** A document and what is selected in it; a cursor is an empty selection. */
export interface SelectedDocument extends ReadDocument {
  start: number;
  end: number;
}

/** What a refactoring changes. */
export interface RefactorEdit {
  /** In the document itself. */
  edits: TextEdit[];
  /** A file that is to be made, by its absolute path. */
  newFile?: { path: string; text: string };
}

/** The groups of refactorings that an editor tells apart. */
export type RefactorKind = 'refactor.extract' | 'refactor.inline' | 'refactor.rewrite';

/** A change of how an instrument is written. */
export interface Refactoring {
  /** A name that stays the same. */
  id: string;
  kind: RefactorKind;
  /** What it may change of what regions sound like; nothing where it does not say. */
  keeps?: Keeps;
  /** What it would do here, as a title; `undefined` where it cannot be done. Quick, since it is asked as the cursor moves. */
  offer(selected: SelectedDocument): string | undefined;
  /** The change; `undefined` where it turns out that it cannot be done. */
  make(selected: SelectedDocument): RefactorEdit | undefined | Promise<RefactorEdit | undefined>;
}
