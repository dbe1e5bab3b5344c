import type { Disposable, TextDocument, TextEdit } from 'vscode';
import { workspace } from 'vscode';
import type { Stretch } from '../../server/model/text/stretch';
import { movedStretch } from './movedStretch';

/** A table that was written into a document as regions. */
export interface WrittenTable {
  table: string;
  document: TextDocument;
  /** Where its regions stand; `undefined` where they were changed since. */
  stretch: Stretch | undefined;
}

/** Remembers the table that was written last and where its regions are, so that they can be written otherwise. */
export class LastWrittenTable implements Disposable {
  #last: WrittenTable | undefined;
  readonly #watch: Disposable;

  constructor() {
    this.#watch = workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
      const last = this.#last;
      if (last?.document !== document || !last.stretch || contentChanges.length === 0) return;
      last.stretch = movedStretch(last.stretch, contentChanges);
    });
  }

  get last(): WrittenTable | undefined {
    return this.#last?.document.isClosed ? undefined : this.#last;
  }

  remember(table: string, document: TextDocument, stretch: Stretch | undefined): void {
    this.#last = { table, document, stretch };
  }

  dispose(): void {
    this.#watch.dispose();
  }
}

/** Where the text of an edit stands once it is made; `undefined` for several edits. Asked before the edit is made. */
export function writtenStretch(document: TextDocument, edits: readonly TextEdit[]): Stretch | undefined {
  const [edit, ...more] = edits;
  if (!edit || more.length > 0) return undefined;
  const start = document.offsetAt(edit.range.start);
  return { start, end: start + edit.newText.length };
}
