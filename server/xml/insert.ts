import { replacing } from '../model/edits';
import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import type { Edited } from '../model/notation';
import { mainSpan } from '../model/text/span';
import { lineEndOf } from '../model/text/textLines';
import { canHold, ElementKind, elementKindAt, isHeaderKind } from './elements';
import type { XmlHandler } from './scan/handler';
import { scanXml } from './scan/scan';
import { writeElements, writeXml } from './write';

/**
 * Writes the headers of an instrument into instrument XML at an offset. Where they cannot stand there, in a tag or in an
 * element that does not take them, they go to the next place that does; into a file without an element as a whole
 * document.
 */
export function insertElements(instrument: Instrument, offset: number, inserted: Instrument): Edited {
  const text = instrument.sources[0]?.text ?? '';
  const lineEnd = lineEndOf(text);
  const place = findPlace(text, offset, outermostKind(inserted));
  if (!place) {
    const { text: newText, notes } = writeXml(inserted, { lineEnd });
    const end = text.trim() === '' ? text.length : offset;
    return { edits: [replacing(mainSpan(text.trim() === '' ? 0 : offset, end), newText)], notes };
  }
  const { at } = place;
  const indentation = /[\r\n]([ \t]+)<\w/.exec(text)?.[1] ?? '  ';
  const { text: written, notes } = writeElements(inserted, place.depth, { lineEnd, indentation });
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

interface Place {
  at: number;
  /** How many elements are open there. */
  depth: number;
}

function findPlace(text: string, offset: number, kind: ElementKind): Place | undefined {
  const finder = new PlaceFinder(text, offset, kind);
  scanXml(text, finder);
  return finder.found;
}

/** Finds the first place at or behind an offset, or else the last one before it, where an element of a kind can stand. */
class PlaceFinder implements XmlHandler {
  found: Place | undefined;
  readonly #text: string;
  readonly #offset: number;
  readonly #wanted: ElementKind;
  readonly #open: ElementKind[] = [];
  #kind: ElementKind = ElementKind.unknown;
  /** Where the markup read last ends: elements can stand from there up to the next. */
  #end = 0;
  #settled = false;

  constructor(text: string, offset: number, wanted: ElementKind) {
    this.#text = text;
    this.#offset = offset;
    this.#wanted = wanted;
  }

  /** Looks at the gap between the markup before and what starts at `start`. */
  #gap(start: number): void {
    const innermost = this.#open[this.#open.length - 1];
    if (this.#settled || innermost === undefined) return;
    const fits =
      canHold(innermost, this.#wanted) && (isHeaderKind(innermost) ? innermost !== HeaderKind.unknown : true);
    if (!fits) return;
    const at = Math.max(this.#end, Math.min(this.#offset, start));
    this.found = { at, depth: this.#open.length };
    if (start >= this.#offset) this.#settled = true;
  }

  open(tagStart: number, nameStart: number, nameEnd: number, hash: number): void {
    this.#gap(tagStart);
    this.#kind = elementKindAt(this.#text, nameStart, nameEnd, hash);
  }

  attribute(): void {}

  openEnd(end: number, empty: boolean): void {
    this.#end = end;
    if (!empty) this.#open.push(this.#kind);
  }

  close(start: number, end: number): void {
    this.#gap(start);
    this.#open.pop();
    this.#end = end;
  }

  characters(_start: number, end: number): void {
    this.#end = end;
  }

  comment(start: number, end: number): void {
    this.#gap(start);
    this.#end = end;
  }

  instruction(start: number, end: number): void {
    this.comment(start, end);
  }

  doctype(): void {}

  problem(): void {}
}
