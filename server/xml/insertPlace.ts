import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { ReadBefore } from '../model/writing/readBefore';
import { canContain, ElementKind, elementKindAt, isHeaderKind } from './elements';
import type { XmlHandler } from './scan/handler';
import { scanXml } from './scan/scan';

/** A place between elements of the main file. */
export interface InsertionPlace {
  at: number;
  /** How many elements are open there. */
  depth: number;
}

/**
 * The first place at or behind an offset, or else the last one before it, where an element of a kind can stand while all
 * that is there keeps its meaning; `undefined` in a text without an element that could hold it.
 */
export function findPlace(
  instrument: Instrument,
  offset: number,
  kind: ElementKind,
): InsertionPlace | undefined {
  const finder = new PlaceFinder(instrument, offset, kind);
  scanXml(finder.text, finder);
  return finder.found ?? finder.lesser;
}

class PlaceFinder implements XmlHandler {
  found: InsertionPlace | undefined;
  /** A place where the text could be written but would change what others inherit. */
  lesser: InsertionPlace | undefined;
  readonly text: string;
  readonly #instrument: Instrument;
  readonly #readBefore: ReadBefore;
  readonly #offset: number;
  readonly #wanted: ElementKind;
  readonly #open: { kind: ElementKind; hasElements: boolean }[] = [];
  #kind: ElementKind = ElementKind.unknown;
  /** Where the markup read last ends: elements can stand from there up to the next. */
  #end = 0;
  #settled = false;

  constructor(instrument: Instrument, offset: number, wanted: ElementKind) {
    this.text = instrument.sources[0]?.text ?? '';
    this.#instrument = instrument;
    this.#readBefore = new ReadBefore(instrument);
    this.#offset = offset;
    this.#wanted = wanted;
  }

  /** Looks at the gap between the markup before and what starts at `start`. */
  #gap(start: number): void {
    const innermost = this.#open[this.#open.length - 1];
    if (this.#settled || innermost === undefined) return;
    const { kind, hasElements } = innermost;
    if (!canContain(kind, this.#wanted) || (isHeaderKind(kind) && kind === HeaderKind.unknown)) return;
    const at = Math.max(this.#end, Math.min(this.#offset, start));
    const place = { at, depth: this.#open.length };
    // A group without elements reaches what follows it, and would not with one inside.
    const reachesOut = isHeaderKind(kind) && !hasElements;
    if (reachesOut || this.#endsReach(at)) {
      this.lesser ??= place;
      return;
    }
    this.found = place;
    if (start >= this.#offset) this.#settled = true;
  }

  /** Whether the next region gets something from an empty group before, which a group in between would end. */
  #endsReach(at: number): boolean {
    if (this.#wanted >= HeaderKind.region) return false;
    const instrument = this.#instrument;
    const { header } = this.#readBefore.at(at);
    let next = header;
    while (next < instrument.headers.count && !passesOn(instrument.kind(next))) next++;
    if (next >= instrument.headers.count || instrument.kind(next) !== HeaderKind.region) return false;
    for (let outer = instrument.parent(next); outer >= 0; outer = instrument.parent(outer)) {
      if (outer >= header || instrument.kind(outer) < this.#wanted) break;
      const { source, start, end } = instrument.bodySpan(outer);
      if (source !== 0 || start >= at || end <= at) return true;
    }
    return false;
  }

  open(tagStart: number, nameStart: number, nameEnd: number, hash: number): void {
    const innermost = this.#open[this.#open.length - 1];
    if (innermost) innermost.hasElements = true;
    this.#gap(tagStart);
    this.#kind = elementKindAt(this.text, nameStart, nameEnd, hash);
  }

  attribute(): void {}

  openEnd(end: number, empty: boolean): void {
    this.#end = end;
    if (!empty) this.#open.push({ kind: this.#kind, hasElements: false });
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

/** Whether a header is a region or one that regions inherit from. */
function passesOn(kind: HeaderKind): boolean {
  return kind >= HeaderKind.global && kind <= HeaderKind.region;
}
