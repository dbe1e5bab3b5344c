import assert from 'node:assert/strict';
import type { TextEdit } from '../../../server/model/finding';
import { HeaderKind } from '../../../server/model/headerKinds';
import type { Instrument } from '../../../server/model/instrument';
import type { Span } from '../../../server/model/text/span';

/** Fails where edits leave the texts of an instrument or two of them touch the same text. */
export function expectSoundEdits({ sources }: Instrument, edits: readonly TextEdit[]): void {
  const sorted = [...edits].sort((a, b) => a.source - b.source || a.start - b.start || a.end - b.end);
  sorted.forEach(({ source, start, end }, at) => {
    assert(0 <= start && start <= end && end <= (sources[source]?.text.length ?? -1), `${start} to ${end}`);
    const before = sorted[at - 1];
    assert(before?.source !== source || start >= before.end, `${start} to ${end} is touched twice`);
  });
}

/** What is put right behind something, or behind the quote that it ends with, is about it too. */
function touches(edit: TextEdit, { source, start, end }: Span, text: string): boolean {
  if (edit.source !== source) return false;
  const blanks = /^\s*/.exec(text.slice(end, end + 20))?.[0].length ?? 0;
  const last = /["']/.test(text[end + blanks] ?? '') ? end + blanks + 1 : end;
  if (edit.start === edit.end) return start < edit.start && edit.start <= last;
  return start < edit.end && edit.start < end;
}

/**
 * What edits are about: by header whether its tag or one of its parameters, or those of a header that it inherits from,
 * is in the text that they touch.
 */
export function concernedHeaders(instrument: Instrument, edits: readonly TextEdit[]): boolean[] {
  const concerned: boolean[] = [];
  // What stands under a control header, or was meant to, is in force in all regions that follow.
  let follows = false;
  for (let header = 0; header < instrument.headers.count; header++) {
    const spans = [instrument.headerSpan(header)];
    for (let one = instrument.firstParameter(header); one < instrument.endParameter(header); one++)
      spans.push(instrument.parameterSpan(one), instrument.nameSpan(one), instrument.valueSpan(one));
    const parent = instrument.parent(header);
    concerned.push(
      follows ||
        (concerned[parent] ?? false) ||
        edits.some((edit) =>
          spans.some((span) => touches(edit, span, instrument.sources[span.source]?.text ?? '')),
        ),
    );
    if (concerned[header] && instrument.kind(header) === HeaderKind.control) follows = true;
  }
  return concerned;
}

/** Whether the tag of a header is in the text that edits take out. */
export function isTakenOut(instrument: Instrument, header: number, edits: readonly TextEdit[]): boolean {
  const tag = instrument.headerSpan(header);
  return edits.some(
    (edit) =>
      edit.source === tag.source &&
      edit.start <= tag.start &&
      edit.end >= tag.end &&
      tag.end > tag.start &&
      !edit.newText.includes('region'),
  );
}
