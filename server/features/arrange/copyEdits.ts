import { editedText } from '../../model/editing/changedInstrument';
import { replacing } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { spanIn } from '../../model/text/span';
import { lineEndAt, lineStartAt } from '../../model/text/textLayout';
import { lineEndOf } from '../../model/text/textLines';

/**
 * The edit that puts a copy of a region behind it, laid out as the region is and with edits made in it; `undefined` where
 * these reach beyond the region's own text.
 */
export function copyEdit(
  instrument: Instrument,
  region: number,
  edits: readonly TextEdit[],
): TextEdit | undefined {
  const { source, start, end } = instrument.bodySpan(region);
  const text = instrument.sources[source]?.text ?? '';
  if (edits.some((edit) => edit.source !== source || edit.start < start || edit.end > end)) return undefined;
  const inside = edits.map((edit) => ({ ...edit, start: edit.start - start, end: edit.end - start }));
  const copy = editedText(text.slice(start, end), inside);
  const before = text.slice(lineStartAt(text, start), start);
  const lead = before.trim() === '' ? linesBefore(text, start) + before : ' ';
  // A remark behind the region is about the region.
  const lineEnd = lineEndAt(text, end);
  const isRemark = instrument.directives.some(
    (one) =>
      one.kind === 'comment' &&
      one.source === source &&
      one.start >= end &&
      one.end >= lineEnd &&
      text.slice(end, one.start).trim() === '' &&
      !text.slice(end, one.start).includes('\n'),
  );
  const at = isRemark && lead !== ' ' ? lineEnd : end;
  return replacing(spanIn(source, at, at), lead + copy);
}

/** The line end before a header, with that of an empty line where one is there. */
function linesBefore(text: string, start: number): string {
  const lineEnd = lineEndOf(text);
  const isApart = /\n[ \t]*\r?\n[ \t]*$/.test(text.slice(Math.max(0, start - 200), start));
  return isApart ? lineEnd + lineEnd : lineEnd;
}
