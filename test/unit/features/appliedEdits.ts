import { expect } from 'vitest';
import type { TextEdit } from '../../../server/model/finding';

/** A text with edits of its main file made; fails where two edits touch the same text. */
export function withEdits(text: string, edits: readonly TextEdit[]): string {
  const sorted = edits
    .map((edit, place) => ({ ...edit, place }))
    .sort((a, b) => a.start - b.start || a.end - b.end || a.place - b.place);
  let made = '';
  let end = 0;
  for (const edit of sorted) {
    expect(edit.source).toBe(0);
    expect(edit.start).toBeGreaterThanOrEqual(end);
    made += text.slice(end, edit.start) + edit.newText;
    end = edit.end;
  }
  return made + text.slice(end);
}
