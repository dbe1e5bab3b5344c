import type { TextEdit } from '../finding';
import type { Span } from '../text/span';
import { endOf, spanIn, startOf } from '../text/span';

/** The edit that puts a text in the place of a span. */
export function replacing({ source, start, end }: Span, newText: string): TextEdit {
  return { ...spanIn(source, start, end), newText };
}

/** The edit that puts a text right before a span. */
export function puttingBefore(span: Span, newText: string): TextEdit {
  return replacing(startOf(span), newText);
}

/** The edit that puts a text right behind a span. */
export function puttingBehind(span: Span, newText: string): TextEdit {
  return replacing(endOf(span), newText);
}

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
