import type { TextEdit } from '../../../server/model/finding';

/** A text with edits made that do not touch one another. */
export function editedText(text: string, edits: readonly TextEdit[]): string {
  return [...edits]
    .sort((a, b) => b.start - a.start)
    .reduce((now, { start, end, newText }) => now.slice(0, start) + newText + now.slice(end), text);
}
