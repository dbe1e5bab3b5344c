import type { TextEdit } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { Source } from '../model/text/source';

/** A change in the text of one file. */
export type FileEdit = Omit<TextEdit, 'source'>;

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
      [...(this.#byPath.get(path)?.byStart.values() ?? [])].map((edit) => ({ ...edit, source })),
    );
  }

  get files(): EditedFile[] {
    return [...this.#byPath.values()].map(({ source, byStart }) => ({
      source,
      edits: [...byStart.values()].sort((a, b) => a.start - b.start),
    }));
  }
}
