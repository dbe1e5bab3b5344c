import type { TextEdit } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Source } from '../model/text/source';
import type { InSomeFile } from '../model/text/span';
import { standingIn } from '../model/text/span';

/** A change in the text of one file. */
export type FileEdit = InSomeFile<TextEdit>;

/** A file with the changes in it, each place once. */
export interface EditedFile {
  source: Source;
  edits: FileEdit[];
}

/** Changes in files that several instruments can share. */
export class FileEdits {
  readonly #byPath = new Map<string, { source: Source; byStart: Map<number, FileEdit> }>();

  /** Adds a change; a file that is reached twice is changed once. */
  add(source: Source, edit: FileEdit): void {
    let file = this.#byPath.get(source.path);
    if (!file) {
      file = { source, byStart: new Map() };
      this.#byPath.set(source.path, file);
    }
    file.byStart.set(edit.start, edit);
  }

  /** The changes in the files of an instrument. */
  of({ sources }: Instrument): TextEdit[] {
    return sources.flatMap(({ path }, source) =>
      [...(this.#byPath.get(path)?.byStart.values() ?? [])].map((edit) => standingIn<TextEdit>(source, edit)),
    );
  }

  get files(): EditedFile[] {
    return [...this.#byPath.values()].map(({ source, byStart }) => ({
      source,
      edits: [...byStart.values()].sort((a, b) => a.start - b.start),
    }));
  }
}
