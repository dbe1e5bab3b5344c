import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import { mainSpan } from '../../model/text/span';
import type { XmlHandler } from '../../xml/scan/handler';
import { decodeXmlAttribute } from '../../xml/scan/references';
import { scanXml } from '../../xml/scan/scan';
import { parsePlace } from '../places';
import type { Vocabulary } from '../vocabulary';

/**
 * A note for each value in a text that its vocabulary has no parameter for, so that it is not read: attributes and texts
 * of any element. What a vocabulary tells elements apart by is no such value.
 */
export function unreadValues(instrument: Instrument, vocabulary: Vocabulary): ConversionNote[] {
  const text = instrument.sources[0]?.text ?? '';
  const search = new UnreadSearch(text, vocabulary);
  scanXml(text, search);
  return search.notes;
}

/** A place that a vocabulary reads: the elements from its level inwards, with what they are told apart by. */
interface Site {
  path: readonly { element: string; selectors: readonly (readonly [string, string])[] }[];
  /** `undefined` where it is the text of the last element. */
  attribute: string | undefined;
}

interface OpenElement {
  name: string;
  attributes: Map<string, string>;
}

class UnreadSearch implements XmlHandler {
  readonly notes: ConversionNote[] = [];
  readonly #text: string;
  readonly #vocabulary: Vocabulary;
  readonly #sites: readonly Site[];
  /** By the name of an element, the sites on whose way it stands and its position there. */
  readonly #through = new Map<string, { site: Site; step: number }[]>();
  readonly #open: OpenElement[] = [];
  #attributes: { name: string; start: number; nameStart: number; end: number }[] = [];

  constructor(text: string, vocabulary: Vocabulary) {
    this.#text = text;
    this.#vocabulary = vocabulary;
    this.#sites = vocabulary.levels.flatMap(({ element, parameters }) =>
      parameters.flatMap(({ at }) => {
        const place = parsePlace(at);
        return place
          ? [{ path: [{ element, selectors: [] }, ...place.steps], attribute: place.attribute }]
          : [];
      }),
    );
    for (const site of this.#sites) {
      site.path.forEach(({ element }, step) => {
        const list = this.#through.get(element);
        if (list) list.push({ site, step });
        else this.#through.set(element, [{ site, step }]);
      });
    }
  }

  open(_tagStart: number, nameStart: number, nameEnd: number): void {
    this.#open.push({ name: this.#text.slice(nameStart, nameEnd), attributes: new Map() });
    this.#attributes = [];
  }

  attribute(_name: number, nameStart: number, nameEnd: number, start: number, end: number): void {
    const name = this.#text.slice(nameStart, nameEnd);
    this.#open[this.#open.length - 1]?.attributes.set(name, decodeXmlAttribute(this.#text.slice(start, end)));
    if (end > start && !/^xml(ns)?(:|$)/.test(name)) this.#attributes.push({ name, nameStart, start, end });
  }

  openEnd(_end: number, empty: boolean): void {
    for (const { name, nameStart, start, end } of this.#attributes) {
      if (this.#isRead(name)) continue;
      const element = this.#open[this.#open.length - 1]?.name ?? '';
      const value = this.#text.slice(start, Math.min(end, start + 60));
      this.#note(nameStart, end, `${name}="${value}" of <${element}>`);
    }
    if (empty) this.#open.pop();
  }

  close(): void {
    this.#open.pop();
  }

  characters(start: number, end: number): void {
    if (this.#isRead(undefined)) return;
    const element = this.#open[this.#open.length - 1]?.name ?? '';
    const shown = this.#text.slice(start, Math.min(end, start + 60)).trim();
    this.#note(start, end, `The text "${shown}" of <${element}>`);
  }

  #note(start: number, end: number, what: string): void {
    const message = `${what} is not read: the vocabulary "${this.#vocabulary.name}" has no parameter for it.`;
    this.notes.push({ kind: 'ignored', ...mainSpan(start, end), message });
  }

  /** Whether an attribute of the innermost element, or its text, is at a place that the vocabulary reads or tells elements apart by. */
  #isRead(attribute: string | undefined): boolean {
    const last = this.#open.length - 1;
    for (const { site, step } of this.#through.get(this.#open[last]?.name ?? '') ?? []) {
      const isEnd = step === site.path.length - 1;
      const selects =
        attribute !== undefined && site.path[step]?.selectors.some(([name]) => name === attribute);
      if (!selects && !(isEnd && site.attribute === attribute)) continue;
      if (this.#standsOn(site, step)) return true;
    }
    return false;
  }

  /** Whether the innermost element is the one at a step of the way to a site. */
  #standsOn({ path }: Site, step: number): boolean {
    const first = this.#open.length - 1 - step;
    if (first < 0) return false;
    for (let at = 0; at <= step; at++) {
      const wanted = path[at];
      const open = this.#open[first + at];
      if (!wanted || open?.name !== wanted.element) return false;
      if (!wanted.selectors.every(([name, value]) => open.attributes.get(name) === value)) return false;
    }
    return true;
  }

  comment(): void {}

  instruction(): void {}

  doctype(): void {}

  problem(): void {}
}
