import { joinPath } from '../../model/paths';
import type { XmlHandler } from '../../xml/scan/handler';
import { ValueMark } from '../../xml/scan/handler';
import { decodeXmlAttribute, decodeXmlText } from '../../xml/scan/references';
import { scanXml } from '../../xml/scan/scan';
import type { SampleListPlace } from '../vocabulary';

/**
 * The paths of a list of samples by what refers to them, as the text has them. The first entry of a key counts. Entries hold
 * both in attributes, the path perhaps as their text.
 */
export function readSampleList(text: string, list: SampleListPlace): ReadonlyMap<string, string> {
  const look = new ListLook(text, list);
  scanXml(text, look);
  return look.paths;
}

/** What stands in an attribute of the entries of a list, by their keys. */
export function readListed(
  text: string,
  { element, key }: SampleListPlace,
  attribute: string,
): ReadonlyMap<string, string> {
  return readSampleList(text, { element, key, path: attribute });
}

class ListLook implements XmlHandler {
  readonly paths = new Map<string, string>();
  readonly #text: string;
  readonly #list: SampleListPlace;
  #depth = 0;
  /** At which depth the content of the entry stands; −1 outside of entries. */
  #entryDepth = -1;
  #isEntry = false;
  #key: string | undefined;
  #path: string | undefined;
  /** The folder that each open element names, and the one whose tag is being read. */
  readonly #folders: (string | undefined)[] = [];
  #folder: string | undefined;

  constructor(text: string, list: SampleListPlace) {
    this.#text = text;
    this.#list = list;
  }

  open(_tagStart: number, nameStart: number, nameEnd: number): void {
    const { element } = this.#list;
    this.#isEntry = element.length === nameEnd - nameStart && this.#text.startsWith(element, nameStart);
    this.#folder = undefined;
    if (!this.#isEntry) return;
    this.#key = undefined;
    this.#path = undefined;
  }

  attribute(
    _attribute: number,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    _number: number,
    marks: number,
  ): void {
    const { key, path, under } = this.#list;
    if (!this.#isEntry && under === undefined) return;
    const place = `@${this.#text.slice(nameStart, nameEnd)}`;
    if (place !== under && (!this.#isEntry || (place !== key && place !== path))) return;
    const raw = this.#text.slice(valueStart, valueEnd);
    const value = marks & ValueMark.encoded ? decodeXmlAttribute(raw) : raw;
    if (place === under && value.trim() !== '') this.#folder = value.trim();
    if (!this.#isEntry) return;
    if (place === key) this.#key = value.trim();
    if (place === path) this.#path = value.trim();
  }

  openEnd(_end: number, empty: boolean): void {
    if (this.#isEntry) this.#add();
    if (empty) return;
    this.#depth++;
    if (this.#list.under !== undefined) this.#folders.push(this.#folder);
    if (this.#isEntry) this.#entryDepth = this.#depth;
  }

  #add(): void {
    const { paths } = this;
    if (this.#key && this.#path && !paths.has(this.#key)) paths.set(this.#key, this.#inFolder(this.#path));
  }

  #inFolder(path: string): string {
    const folder = this.#folder ?? this.#folders.findLast((one) => one !== undefined);
    return folder === undefined ? path : joinPath(folder.replaceAll('\\', '/'), path.replaceAll('\\', '/'));
  }

  close(): void {
    if (this.#list.under !== undefined) this.#folders.pop();
    if (this.#depth === this.#entryDepth) this.#entryDepth = -1;
    if (this.#depth > 0) this.#depth--;
  }

  characters(start: number, end: number): void {
    if (this.#list.path !== '.' || this.#depth !== this.#entryDepth) return;
    this.#path = decodeXmlText(this.#text.slice(start, end)).trim();
    this.#add();
  }

  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}

/** The lists of samples of a text, read when they are needed. */
export class SampleLists {
  readonly #text: string;
  readonly #known = new Map<SampleListPlace, ReadonlyMap<string, string>>();
  readonly #rates = new Map<SampleListPlace, ReadonlyMap<string, string>>();

  constructor(text: string) {
    this.#text = text;
  }

  /** The sample rates that a list states, by the keys of its entries. */
  ratesOf(place: SampleListPlace): ReadonlyMap<string, string> {
    let rates = this.#rates.get(place);
    if (!rates) {
      rates = readListed(this.#text, place, place.rate ?? '');
      this.#rates.set(place, rates);
    }
    return rates;
  }

  /** The paths of a list by the keys that name them. */
  of(place: SampleListPlace): ReadonlyMap<string, string> {
    let list = this.#known.get(place);
    if (!list) {
      list = readSampleList(this.#text, place);
      this.#known.set(place, list);
    }
    return list;
  }
}
