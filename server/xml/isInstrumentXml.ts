import { isInstrumentXmlFileName, isXmlFileName } from '../model/fileNames';
import { ElementKind, elementKindAt, isHeaderKind } from './elements';
import type { XmlHandler } from './scan/handler';
import { scanXml } from './scan/scan';

/** Enough of a text to see its outermost element and the first one inside. */
const looked = 65_536;

/**
 * Whether a text is an instrument in our XML notation: its file is named `*.instrument.xml`, or its outermost element is
 * `instrument` without a namespace and the first element in that, if there is one, belongs to the notation.
 */
export function isInstrumentXml(text: string, path: string): boolean {
  if (isInstrumentXmlFileName(path)) return true;
  const start = text.slice(0, looked);
  if (!/^\ufeff?\s*</.test(start) || !start.includes('<instrument')) return false;
  const look = new Look(start);
  scanXml(look.text, look);
  return look.isInstrument;
}

class Look implements XmlHandler {
  readonly text: string;
  isInstrument = false;
  #elements = 0;

  constructor(text: string) {
    this.text = text;
  }

  open(_tagStart: number, nameStart: number, nameEnd: number, hash: number): void {
    this.#elements++;
    if (this.#elements > 2) return;
    const kind = elementKindAt(this.text, nameStart, nameEnd, hash);
    if (this.#elements === 1) this.isInstrument = kind === ElementKind.instrument;
    else if (!(isHeaderKind(kind) && kind !== ElementKind.unknown) && !isDirective(kind))
      this.isInstrument = false;
  }

  attribute(_name: number, nameStart: number, nameEnd: number): void {
    if (this.#elements === 1 && this.text.slice(nameStart, nameEnd) === 'xmlns') this.isInstrument = false;
  }

  openEnd(): void {}
  close(): void {}
  characters(): void {}
  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}

function isDirective(kind: ElementKind): boolean {
  return kind === ElementKind.define || kind === ElementKind.include;
}

/** Whether a file that an XML instrument includes is read as XML; any other is SFZ. */
export function isReadAsXml(path: string, text: string): boolean {
  return isXmlFileName(path) || isInstrumentXml(text, path);
}
