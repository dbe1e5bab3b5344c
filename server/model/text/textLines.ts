import type { Span } from './span';
import { spanIn } from './span';

/** The line end that a text uses: that of its first line, LF where it has only one. */
export function lineEndOf(text: string): '\n' | '\r\n' {
  const at = text.indexOf('\n');
  return at > 0 && text[at - 1] === '\r' ? '\r\n' : '\n';
}

/** A span widened to whole lines with their line end, where nothing else stands on them; else the span itself. */
export function wholeLine(text: string, span: Span): Span {
  let { start, end } = span;
  while (start > 0 && (text[start - 1] === ' ' || text[start - 1] === '\t')) start--;
  while (end < text.length && (text[end] === ' ' || text[end] === '\t')) end++;
  const startsLine = start === 0 || text[start - 1] === '\n' || text[start - 1] === '\r';
  const endsLine = end === text.length || text[end] === '\n' || text[end] === '\r';
  if (!startsLine || !endsLine) return span;
  if (text[end] === '\r') end++;
  if (text[end] === '\n') end++;
  return spanIn(span.source, start, end);
}
