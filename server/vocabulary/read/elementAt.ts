import type { Instrument } from '../../model/instrument';
import type { XmlHandler } from '../../xml/scan/handler';
import { ValueMark } from '../../xml/scan/handler';
import { nameHash } from '../../xml/scan/nameHash';
import { decodeXmlAttribute } from '../../xml/scan/references';
import { scanXml } from '../../xml/scan/scan';
import type { ChildElements, CompiledVocabulary, ElementPlace } from './compile';

/** An element that was looked for. */
export interface FoundElement {
  /** What it is in the vocabulary; `undefined` where the vocabulary does not know it. */
  element: ElementPlace | undefined;
  /** Numbers of its attributes that say what others mean. */
  naming: ReadonlySet<number>;
}

const none: ReadonlySet<number> = new Set();

/**
 * What the element is whose tag starts at `offset`, or, without the `name` of one, the element that is open there. `header` is the
 * innermost header around it, from whose tag on the text is read again; −1 stands for the start of the text.
 */
export function findElement(
  vocabulary: CompiledVocabulary,
  instrument: Instrument,
  header: number,
  offset: number,
  name: string | undefined,
): FoundElement {
  const text = instrument.sources[0]?.text ?? '';
  const start = header < 0 ? 0 : instrument.headerSpan(header).start;
  const level = header < 0 ? -1 : levelOf(vocabulary, instrument, header);
  const place = vocabulary.places[level];
  if (place && name !== undefined && start === offset) return { element: place, naming: none };
  const tagEnd = name === undefined ? offset : endOfTag(text, offset);
  const search = new ElementSearch(vocabulary, place, text.slice(start, tagEnd), offset - start);
  scanXml(search.text, search);
  return search.found;
}

function levelOf({ levels, elements }: CompiledVocabulary, instrument: Instrument, header: number): number {
  const { source, start, end } = instrument.headerSpan(header);
  const name = instrument.sources[source]?.text.slice(start + 1, end);
  const kind = instrument.kind(header);
  return elements.findIndex((element, level) => element === name && levels[level]?.kind === kind);
}

/** Behind the `>` that ends a tag, or where the next one starts. */
function endOfTag(text: string, start: number): number {
  let quote = '';
  for (let at = start + 1; at < text.length; at++) {
    const character = text[at];
    if (quote !== '') {
      if (character === quote) quote = '';
    } else if (character === '"' || character === "'") quote = character;
    else if (character === '>') return at + 1;
    else if (character === '<') return at;
  }
  return text.length;
}

interface TagAttribute {
  number: number;
  start: number;
  end: number;
  isEncoded: boolean;
}

/** Follows the elements of a stretch of text up to the one that is looked for. */
class ElementSearch implements XmlHandler {
  readonly #vocabulary: CompiledVocabulary;
  readonly #outer: ElementPlace | undefined;
  readonly #offset: number;
  readonly #open: FoundElement[] = [];
  #children: ChildElements | undefined;
  #element: ElementPlace | undefined;
  #isFound = false;
  #attributes: TagAttribute[] = [];
  found: FoundElement = { element: undefined, naming: none };

  /** `outer` is the outermost element of the stretch; without it the stretch starts the document. */
  constructor(
    vocabulary: CompiledVocabulary,
    outer: ElementPlace | undefined,
    readonly text: string,
    offset: number,
  ) {
    this.#vocabulary = vocabulary;
    this.#outer = outer;
    this.#offset = offset;
  }

  open(tagStart: number, nameStart: number, nameEnd: number): void {
    this.#isFound = tagStart === this.#offset;
    this.#attributes = [];
    this.#children = undefined;
    if (this.#open.length === 0 && this.#outer) {
      this.#element = this.#outer;
      return;
    }
    const around =
      this.#open.length === 0 ? this.#vocabulary.root : this.#open[this.#open.length - 1]?.element;
    const hash = nameHash(this.text, nameStart, nameEnd);
    const children = around?.childrenNamed(this.text, nameStart, nameEnd, hash);
    if (children?.goesByAttributes) this.#children = children;
    else this.#element = children?.place;
    const isOutermost = this.#open.length === 0;
    if (!children) this.#element = isOutermost ? this.#vocabulary.outermost : undefined;
  }

  attribute(
    _name: number,
    nameStart: number,
    nameEnd: number,
    start: number,
    end: number,
    _number: number,
    marks: number,
  ): void {
    const number = this.#vocabulary.attributes.get(this.text.slice(nameStart, nameEnd));
    if (number === undefined) return;
    this.#attributes.push({ number, start, end, isEncoded: (marks & ValueMark.encoded) !== 0 });
  }

  openEnd(_end: number, empty: boolean): void {
    const naming = this.#children?.conditionAttributes ?? none;
    if (this.#children) {
      this.#element = this.#children.choose((wanted) => {
        const found = this.#attributes.findLast(({ number }) => number === wanted);
        if (!found) return undefined;
        const raw = this.text.slice(found.start, found.end);
        return found.isEncoded ? decodeXmlAttribute(raw) : raw;
      });
    }
    const one = { element: this.#element, naming };
    const isKnown = one.element !== this.#vocabulary.outermost;
    if (this.#isFound) this.found = isKnown ? one : { ...one, element: undefined };
    if (!empty) {
      this.#open.push(one);
      this.#settle();
    }
  }

  close(start: number): void {
    // The end of the stretch ends all that is open there.
    if (start >= this.text.length) return;
    this.#open.pop();
    this.#settle();
  }

  /** Where a text is looked for, the element that is open last is the one around it. */
  #settle(): void {
    if (this.#offset < this.text.length) return;
    this.found = this.#open[this.#open.length - 1] ?? { element: undefined, naming: none };
  }

  characters(): void {}
  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}
