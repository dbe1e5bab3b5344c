import { expect } from 'vitest';
import { editedText } from '../../../server/model/editing/changedInstrument';
import type { TextEdit } from '../../../server/model/finding';

/** A text with edits of its main file made; fails where two edits touch the same text. */
export function withEdits(text: string, edits: readonly TextEdit[]): string {
  let end = 0;
  for (const edit of [...edits].sort((a, b) => a.start - b.start || a.end - b.end)) {
    expect(edit.source).toBe(0);
    expect(edit.start).toBeGreaterThanOrEqual(end);
    end = edit.end;
  }
  return editedText(text, edits);
}
