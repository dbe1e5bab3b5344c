import type { Position, Range } from 'vscode-languageserver';
import type { Source } from '../../model/text/source';

/** An offset as a line and character, both counted from 0. */
export function positionOf(source: Source, offset: number): Position {
  const { line, column } = source.positionAt(offset);
  return { line: line - 1, character: column - 1 };
}

/** A span of a text as a range. */
export function rangeOf(source: Source, span: { start: number; end: number }): Range {
  const start = positionOf(source, span.start);
  // Most spans end in the line that they start in, which need not be searched for again.
  const next = source.lineStarts[start.line + 1];
  const isOneLine = span.end >= span.start && (next === undefined || span.end < next);
  const end = isOneLine
    ? { line: start.line, character: start.character + span.end - span.start }
    : positionOf(source, span.end);
  return { start, end };
}

/** The offset of a position; positions past the end of a line or text count as its end. */
export function offsetOf(source: Source, position: Position): number {
  const starts = source.lineStarts;
  if (position.line >= starts.length) return source.text.length;
  const start = starts[Math.max(0, position.line)];
  const next = starts[position.line + 1] ?? source.text.length + 1;
  let end = next - 1;
  if (source.text[end] === '\n' && end > start && source.text[end - 1] === '\r') end--;
  return Math.max(start, Math.min(start + position.character, end));
}
