import { namesAudioFileIn } from '../model/fileNames';
import type { XmlHandler } from './scan/handler';
import { scanXml } from './scan/scan';

/** The element that a text ends in the middle of. */
export interface CutElement {
  name: string;
  start: number;
}

/** What stands in an element: how many audio files the whole elements of each name in it name at most. */
type Inner = Map<string, number>;

interface Open {
  name: string;
  start: number;
  /** How many audio files were named before it. */
  filesBefore: number;
  inner: Inner;
}

/** An element that is open at the end, and what those of its name beside it name at most; `undefined` where there are none. */
interface Unclosed extends CutElement {
  beside: number | undefined;
}

/**
 * The element that a copied text ends in the middle of: of those that are open at the end, the outermost one that is a zone by what stands
 * in others of its name, or else the innermost one that has others of its name beside it. `undefined` where none is begun and not ended,
 * other than elements around those that are whole.
 */
export function cutElement(text: string): CutElement | undefined {
  const end = text.trimEnd().length;
  const outermost = /^\ufeff?\s*(?:<[?!][^>]*>\s*)*<([^\s<>/!?]{1,100})/.exec(text.slice(0, 4096))?.[1];
  if (outermost !== undefined && text.slice(0, end).endsWith(`</${outermost}>`)) return undefined;
  const look = new CutLook(text, end);
  scanXml(text, look);
  const { unclosed } = look;
  const zone = unclosed.findLast(({ beside }) => beside === 1);
  if (zone || look.lastEnd >= end) return zone;
  return unclosed.find(({ beside }) => beside !== undefined);
}

class CutLook implements XmlHandler {
  /** Elements that are open at the end of the text, the innermost first. */
  readonly unclosed: Unclosed[] = [];
  /** Where the last element that is whole ends. */
  lastEnd = 0;
  #files = 0;
  readonly #top: Inner = new Map();
  readonly #open: Open[] = [];

  constructor(
    readonly text: string,
    readonly end: number,
  ) {}

  open(start: number, nameStart: number, nameEnd: number): void {
    const name = this.text.slice(nameStart, nameEnd);
    this.#open.push({ name, start, filesBefore: this.#files, inner: new Map() });
  }

  attribute(_: number, _start: number, _end: number, valueStart: number, valueEnd: number): void {
    this.#count(valueStart, valueEnd);
  }

  openEnd(end: number, empty: boolean): void {
    if (empty) this.#close(end, false);
  }

  close(start: number, end: number): void {
    this.#close(end, start === end && start >= this.end);
  }

  characters(start: number, end: number): void {
    this.#count(start, end);
  }

  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}

  #count(start: number, end: number): void {
    if (namesAudioFileIn(this.text.slice(start, end))) this.#files++;
  }

  #close(end: number, isUnclosed: boolean): void {
    const element = this.#open.pop();
    if (!element) return;
    const { name, start, filesBefore } = element;
    const around = this.#open.at(-1)?.inner ?? this.#top;
    if (isUnclosed) {
      this.unclosed.push({ name, start, beside: around.get(name) });
      return;
    }
    this.lastEnd = end;
    around.set(name, Math.max(around.get(name) ?? 0, this.#files - filesBefore));
  }
}
