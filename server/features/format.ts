import type { TextEdit } from '../model/finding';
import type { FormatStyle } from '../model/formatStyle';
import { lineEndAt, lineStartAt } from '../model/text/textLayout';
import type { ReadDocument } from './readDocument';
import { mainSource } from './readDocument';

/** The edits that lay a whole document out. */
export function formatDocument({ notation, instrument }: ReadDocument, style: FormatStyle): TextEdit[] {
  return notation.layOut(instrument, style);
}

/** The edits that lay out the lines which a stretch of text touches, and nothing around them. */
export function formatRange(
  document: ReadDocument,
  start: number,
  end: number,
  style: FormatStyle,
): TextEdit[] {
  const { text } = mainSource(document);
  const from = lineStartAt(text, start);
  // A selection of whole lines ends at the start of the line behind them.
  const to = end > start && lineStartAt(text, end) === end ? end : lineEndAt(text, end);
  return formatDocument(document, style).filter((edit) => edit.start >= from && edit.end <= to);
}

/** The edits right after a line break or a `>` was typed before `offset`: they lay out the line that was finished. */
export function formatOnType(
  document: ReadDocument,
  offset: number,
  character: string,
  style: FormatStyle,
): TextEdit[] {
  const { text } = mainSource(document);
  const end = character === '\n' ? lineEndAt(text, previousLineEnd(text, offset)) : offset;
  const start = lineStartAt(text, end);
  // What is behind the cursor is still to be written.
  return document.notation
    .layOut(document.instrument, style, { start, end })
    .filter((edit) => edit.start >= start && edit.start < end && edit.end <= end);
}

function previousLineEnd(text: string, offset: number): number {
  let at = lineStartAt(text, offset);
  if (at > 0 && text[at - 1] === '\n') at--;
  if (at > 0 && text[at - 1] === '\r') at--;
  return at;
}
