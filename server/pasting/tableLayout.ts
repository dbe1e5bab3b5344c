import { editedText } from '../model/editing/changedInstrument';
import { replacing } from '../model/editing/edits';
import type { TextEdit } from '../model/finding';
import type { FormatStyle, HeaderLayout } from '../model/formatStyle';
import type { Instrument } from '../model/instrument';
import type { Notation } from '../model/notation';
import type { Steps } from '../model/steps';
import { mainSpan } from '../model/text/span';
import { lineStartAt } from '../model/text/textLayout';

const mostLooks = 400;

/** The part of a document's layout that new regions follow. */
export interface RegionLayout {
  headers: HeaderLayout;
  alignColumns: boolean;
}

/**
 * How the regions of a document are laid out: whether their opcodes stand in columns, and whether each opcode has a line
 * of its own. Found from its first few hundred regions.
 */
export function regionLayoutOf(document: Instrument): RegionLayout {
  const text = document.sources[0]?.text ?? '';
  let inLine = 0;
  let onOwnLines = 0;
  let pairs = 0;
  let alignedPairs = 0;
  let last: LinePlaces | undefined;
  for (const region of document.regions.subarray(0, mostLooks)) {
    const first = document.firstParameter(region);
    const end = document.endParameter(region);
    if (document.headerSource(region) !== 0 || end - first < 2) continue;
    const places = linePlaces(document, text, region);
    if (places.breaks === end - first - 1) onOwnLines++;
    else inLine++;
    if (last && last.breaks === 0 && places.breaks === 0) {
      pairs++;
      if ((last.isPadded || places.isPadded) && standsBelow(last, places)) alignedPairs++;
    }
    last = places;
  }
  return {
    headers: onOwnLines > inLine ? 'ownLine' : 'regionsInline',
    alignColumns: alignedPairs > 0 && alignedPairs * 2 >= pairs,
  };
}

/** Where the opcodes of a region stand. */
interface LinePlaces {
  /** Distances from the start of the line. */
  columns: number[];
  /** Line breaks between opcodes, and whether more than one blank stands between some. */
  breaks: number;
  isPadded: boolean;
}

function linePlaces(document: Instrument, text: string, region: number): LinePlaces {
  const first = document.firstParameter(region);
  const lineStart = lineStartAt(text, document.headerSpan(region).start);
  const places: LinePlaces = { columns: [], breaks: 0, isPadded: false };
  for (let one = first; one < document.endParameter(region); one++) {
    const { start } = document.parameterSpan(one);
    places.columns.push(start - lineStart);
    if (one === first) continue;
    const gap = text.slice(document.valueSpan(one - 1).end, start);
    if (/[\r\n]/.test(gap)) places.breaks++;
    else if (/^["']? {2,}$/.test(gap)) places.isPadded = true;
  }
  return places;
}

function standsBelow({ columns }: LinePlaces, other: LinePlaces): boolean {
  const shared = Math.min(columns.length, other.columns.length);
  return columns.slice(0, shared).every((column, at) => column === other.columns[at]);
}

/**
 * An edit that writes regions, with these laid out as those around them. Columns around them that have to become wider
 * are part of the edit then; apart from that the text around stays as it is.
 */
export function* layOutInserted(
  notation: Notation,
  text: string,
  path: string,
  edit: TextEdit,
  style: FormatStyle,
): Steps<TextEdit> {
  const written = editedText(text, [edit]);
  const from = edit.start;
  const to = edit.start + edit.newText.length;
  const instrument = yield* notation.readInSteps(written, { path });
  const layout = notation
    .layOut(instrument, style, { start: from, end: to })
    .filter(({ start, end, newText }) => {
      if (start >= from && end <= to) return true;
      return /^ *$/.test(newText) && /^ *$/.test(written.slice(start, end));
    });
  if (layout.length === 0) return edit;
  const inside = layout.filter(({ start, end }) => start >= from && end <= to);
  if (inside.length === layout.length) {
    const moved = inside.map((one) => ({ ...one, start: one.start - from, end: one.end - from }));
    return { ...edit, newText: editedText(edit.newText, moved) };
  }
  return difference(text, editedText(written, layout));
}

/** The one edit that makes a text of another, as short as it can be. */
function difference(before: string, after: string): TextEdit {
  const most = Math.min(before.length, after.length);
  let start = 0;
  while (start < most && before[start] === after[start]) start++;
  let same = 0;
  while (same < most - start && before[before.length - 1 - same] === after[after.length - 1 - same]) same++;
  return replacing(mainSpan(start, before.length - same), after.slice(start, after.length - same));
}
