import type { TextEdit } from './finding';

/**
 * Edits made one: in the order of the text, those that take the same text out joined, and text that is added where
 * text is taken out put in its place, so that no two touch.
 */
export function joinEdits(edits: readonly TextEdit[]): TextEdit[] {
  const sorted = [...edits].sort((a, b) => a.source - b.source || a.start - b.start);
  const joined: TextEdit[] = [];
  for (const edit of sorted) {
    const last = joined[joined.length - 1];
    if (last && last.source === edit.source && (edit.start < last.end || edit.start === last.start)) {
      last.end = Math.max(last.end, edit.end);
      last.newText += edit.newText;
    } else joined.push({ ...edit });
  }
  return joined;
}
