import { replacing } from '../model/editing/edits';
import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import type { Edited } from '../model/notation';
import type { Steps } from '../model/steps';
import { mainSpan } from '../model/text/span';
import { lineEndOf } from '../model/text/textLines';
import type { ElementKind } from './elements';
import { findPlace } from './insertPlace';
import { writeElements, writeXmlInSteps } from './write';

/**
 * Writes the headers of an instrument into instrument XML at an offset. Where they cannot stand there, in a tag or in an
 * element that does not take them, they go to the next place that does; into a file without an element as a whole
 * document.
 */
export function* insertElements(instrument: Instrument, offset: number, inserted: Instrument): Steps<Edited> {
  const text = instrument.sources[0]?.text ?? '';
  const lineEnd = lineEndOf(text);
  const place = findPlace(instrument, offset, outermostKind(inserted));
  if (!place) {
    const { text: newText, notes } = yield* writeXmlInSteps(inserted, { lineEnd });
    const end = text.trim() === '' ? text.length : offset;
    return { edits: [replacing(mainSpan(text.trim() === '' ? 0 : offset, end), newText)], notes };
  }
  const { at } = place;
  const indentation = /[\r\n]([ \t]+)<\w/.exec(text)?.[1] ?? '  ';
  const { text: written, notes } = yield* writeElements(inserted, place.depth, {
    lineEnd,
    indentation,
  });
  const before = /[^\r\n]*$/.exec(text.slice(Math.max(0, at - 10_000), at))?.[0] ?? '';
  const after = /^[^\r\n]*/.exec(text.slice(at, at + 10_000))?.[0] ?? '';
  const lead = before.trim() === '' ? '' : lineEnd;
  const blankLine = before.trim() === '' && after.trim() === '';
  // Where something stands behind the place, it moves to a line of its own, indented as it was or by one step less.
  const tail =
    after.trim() === ''
      ? ''
      : lineEnd + (before.trim() === '' ? before : indentation.repeat(place.depth - 1));
  const start = before.trim() === '' ? at - before.length : at;
  const elements = written.slice(0, -lineEnd.length);
  const newText = lead + elements + (tail !== '' || blankLine ? tail : '');
  return { edits: [replacing(mainSpan(start, at), newText)], notes };
}

/** The kind of header, of those inserted, that stands furthest out. */
function outermostKind(inserted: Instrument): ElementKind {
  let outermost: ElementKind = HeaderKind.region;
  for (let header = 0; header < inserted.headers.count; header++) {
    const kind = inserted.kind(header);
    if (kind >= HeaderKind.global && kind < outermost) outermost = kind;
  }
  return outermost;
}
