import type { Source } from '../model/text/source';
import type { HeaderSymbol } from './navigation/symbols';

/** Lines that can be folded away, counted from 0, both inclusive. */
export interface FoldedLines {
  startLine: number;
  endLine: number;
  kind?: 'comment';
}

/** The headers of a document that go over several lines, and its block comments. */
export function foldedLines(
  source: Source,
  symbols: readonly HeaderSymbol[],
  comments: Iterable<{ start: number; end: number }>,
): FoldedLines[] {
  const found: FoldedLines[] = [];
  const add = (start: number, end: number, kind?: 'comment') => {
    const startLine = source.positionAt(start).line - 1;
    const endLine = source.positionAt(end).line - 1;
    if (endLine > startLine) found.push({ startLine, endLine, ...(kind && { kind }) });
  };
  const open = [...symbols].reverse();
  for (let symbol = open.pop(); symbol; symbol = open.pop()) {
    add(symbol.start, symbol.end);
    for (const child of symbol.children) open.push(child);
  }
  for (const { start, end } of comments) add(start, end, 'comment');
  return found;
}
