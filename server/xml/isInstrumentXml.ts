import { isInstrumentXmlFileName, isXmlFileName, namesAudioFileIn } from '../model/fileNames';
import { resolveOpcode } from '../model/opcodes/resolve';
import { ElementKind, elementKindAt, isHeaderKind } from './elements';
import type { XmlHandler } from './scan/handler';
import { scanXml } from './scan/scan';

/** Enough of a text to see its outermost element and the first one inside. */
const looked = 65_536;

/**
 * Whether a text is an instrument in our XML notation: its file is named `*.instrument.xml`, or its outermost element is
 * `instrument` without a namespace and the first element in that, if there is one, belongs to the notation. XML whose elements are
 * called alike, but which names its audio files elsewhere than in `sample`, is in other names: read as ours it would have no sample.
 * So is XML whose regions give most of what they say in attributes that the format does not know.
 */
export function isInstrumentXml(text: string, path: string): boolean {
  if (isInstrumentXmlFileName(path)) return true;
  const start = text.slice(0, looked);
  if (!/^\ufeff?\s*</.test(start) || !start.includes('<instrument')) return false;
  const look = new Look(start);
  scanXml(look.text, look);
  return look.isInstrument;
}

/** So many unknown names are no slips of the pen (our choice). */
const leastForeign = 2;
/** Names that nobody but the format uses for the ends of ranges. */
const ofFormat = /_|^(?:lo|hi)(?:key|vel)$/i;

class Look implements XmlHandler {
  readonly text: string;
  #isNamedSo = false;
  #elements = 0;
  /** Whether samples come as in our notation, or by a file that is included. */
  #hasSample = false;
  #hasOtherFiles = false;
  /** The names of attributes of regions, and of what holds them, that the format knows beside `sample`, and those that it does not. */
  readonly #known = new Set<string>();
  readonly #foreign = new Set<string>();
  /** Open elements, and those among them that are in a region. */
  #depth = 0;
  #region = Number.POSITIVE_INFINITY;

  constructor(text: string) {
    this.text = text;
  }

  get isInstrument(): boolean {
    return this.#isNamedSo && (this.#hasSample || !this.#hasOtherFiles) && !this.#isInOtherNames;
  }

  get #isInOtherNames(): boolean {
    if (this.#foreign.size < leastForeign || this.#foreign.size < this.#known.size) return false;
    return ![...this.#known].some((name) => ofFormat.test(name));
  }

  open(_tagStart: number, nameStart: number, nameEnd: number, hash: number): void {
    this.#elements++;
    this.#depth++;
    const kind = elementKindAt(this.text, nameStart, nameEnd, hash);
    if (kind === ElementKind.region) this.#region = Math.min(this.#region, this.#depth);
    if (kind === ElementKind.include) this.#hasSample = true;
    if (this.#elements > 2) return;
    if (this.#elements === 1) this.#isNamedSo = kind === ElementKind.instrument;
    else if (!(isHeaderKind(kind) && kind !== ElementKind.unknown) && !isDirective(kind))
      this.#isNamedSo = false;
  }

  attribute(
    _name: number,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    number: number,
  ): void {
    const name = this.text.slice(nameStart, nameEnd);
    if (this.#elements === 1 && name === 'xmlns') this.#isNamedSo = false;
    if (name === 'sample') this.#hasSample = true;
    else if (this.#region <= this.#depth) {
      // A name with a variable in it may stand for any.
      const names = resolveOpcode(name) || name.includes('$') ? this.#known : this.#foreign;
      names.add(name);
    }
    if (name !== 'sample' && Number.isNaN(number)) this.#lookAt(valueStart, valueEnd);
  }

  openEnd(_end: number, empty: boolean): void {
    if (empty) this.close();
  }

  close(): void {
    if (this.#depth === this.#region) this.#region = Number.POSITIVE_INFINITY;
    this.#depth--;
  }

  /** No element of ours holds text, so that one in a region may be the name of its file, with an ending or without. */
  characters(start: number, end: number): void {
    if (this.#depth > this.#region) this.#hasOtherFiles = true;
    else this.#lookAt(start, end);
  }

  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}

  #lookAt(start: number, end: number): void {
    this.#hasOtherFiles ||= !this.#hasSample && namesAudioFileIn(this.text.slice(start, end));
  }
}

function isDirective(kind: ElementKind): boolean {
  return kind === ElementKind.define || kind === ElementKind.include;
}

/** Whether a file that an XML instrument includes is read as XML; any other is SFZ. */
export function isReadAsXml(path: string, text: string): boolean {
  return isXmlFileName(path) || isInstrumentXml(text, path);
}
