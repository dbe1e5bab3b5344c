import { readEdited } from '../model/editing/changedInstrument';
import { replacing } from '../model/editing/edits';
import { effectiveValues } from '../model/effectiveValues';
import type { Instrument } from '../model/instrument';
import type { Edited } from '../model/notation';
import type { Span } from '../model/text/span';
import { spanIn } from '../model/text/span';
import { wholeLine } from '../model/text/textLines';
import { readXml } from './read';
import { nameEndAt } from './scan/characters';

/**
 * Takes an element out; of one with elements inside only its tags, since these stay. A group that would be left without an
 * element goes too, as it would reach what follows it then; where its end keeps another one from that, nothing is changed.
 */
export function removeElement(instrument: Instrument, header: number): Edited {
  const body = instrument.bodySpan(header);
  const text = instrument.sources[body.source]?.text ?? '';
  const spans = ownText(text, body);
  const emptied = spans.length > 1 ? [] : emptiedAround(instrument, header, text);
  for (const around of emptied) spans.push(...tagsOf(text, around));
  const edits = spans.map((span) => replacing(wholeLine(text, span), ''));
  if (emptied.length === 0 || leavesOthers(instrument, header, edits)) return { edits, notes: [] };
  const message = 'Without this element the group around it would reach others, so nothing was changed.';
  return { edits: [], notes: [{ kind: 'dropped', ...instrument.headerSpan(header), message }] };
}

/** An element, or its two tags where elements stand inside. */
function ownText(text: string, body: Span): Span[] {
  const [open, close] = tagsOf(text, body);
  return close && hasMarkup(text.slice(open.end, close.start)) ? [open, close] : [body];
}

/** The start tag of an element and its end tag, where it has one. */
function tagsOf(text: string, { source, start, end }: Span): [Span] | [Span, Span] {
  const tagEnd = startTagEnd(text, start);
  const last = text.slice(tagEnd, end).lastIndexOf('</');
  const open = spanIn(source, start, tagEnd);
  return last >= 0 ? [open, spanIn(source, tagEnd + last, end)] : [open];
}

function hasMarkup(text: string): boolean {
  return text.includes('<');
}

/** The elements around one that hold no other, from the inside out. */
function emptiedAround(instrument: Instrument, header: number, text: string): Span[] {
  const emptied: Span[] = [];
  let inner = instrument.bodySpan(header);
  for (let at = instrument.parent(header); at >= 0; at = instrument.parent(at)) {
    const outer = instrument.bodySpan(at);
    if (outer.source !== inner.source || outer.end < inner.end) break;
    const [open, close] = tagsOf(text, outer);
    const isOnly = (from: number, to: number) =>
      !hasMarkup(text.slice(from, to).replace(/<!--[\s\S]*?-->/g, ''));
    if (!close || !isOnly(open.end, inner.start) || !isOnly(inner.end, close.start)) break;
    emptied.push(outer);
    inner = outer;
  }
  return emptied;
}

/** Whether all regions but one have the same values after a change. */
function leavesOthers(instrument: Instrument, header: number, edits: Edited['edits']): boolean {
  const after = readEdited({ read: readXml }, instrument, edits);
  const kept = instrument.regions.filter((region) => region !== header);
  return (
    kept.length === after.regions.length &&
    kept.every((region, at) =>
      isSame(effectiveValues(instrument, region), effectiveValues(after, after.regions[at])),
    )
  );
}

function isSame(a: Record<string, number | string>, b: Record<string, number | string>): boolean {
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => a[name] === b[name]);
}

/** Behind the `>` of the start tag at `start`. */
function startTagEnd(text: string, start: number): number {
  let at = nameEndAt(text, start + 1);
  while (at < text.length && text[at] !== '>') {
    const quote = text[at];
    const close = quote === '"' || quote === "'" ? text.indexOf(quote, at + 1) : -1;
    at = close < 0 ? at + 1 : close + 1;
  }
  return Math.min(text.length, at + 1);
}
