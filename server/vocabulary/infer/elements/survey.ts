import type { Steps } from '../../../model/steps';
import { declaredEntities } from '../../../xml/declaredEntities';
import type { XmlHandler } from '../../../xml/scan/handler';
import { ValueMark } from '../../../xml/scan/handler';
import { decodeXmlAttribute, decodeXmlText } from '../../../xml/scan/references';
import { scanXmlInSteps } from '../../../xml/scan/scan';
import { longestName, NamesByNumber } from './namesByNumber';

/** A value of the text with its place. */
export interface Cell {
  text: string;
  start: number;
  end: number;
}

/** One attribute of the elements of a type, or their text: some of its values, spread over the document. */
export interface Site {
  count: number;
  values: Cell[];
  /** How often each value occurs; only as long as they are few. */
  tally: Map<string, number> | undefined;
  /** Every how manieth value is kept. */
  stride: number;
}

/** All elements of one name at one place in the nesting. */
export interface ElementType {
  name: string;
  parent: ElementType | undefined;
  depth: number;
  count: number;
  /** The most that stand in one element of the type around it. */
  mostInParent: number;
  /** In how many elements of the type around it some stand. */
  parents: number;
  attributes: Map<string, Site>;
  text: Site | undefined;
  children: Map<string, ElementType>;
  /** Its first tag up to the end of the name. */
  start: number;
  end: number;
}

/** The types of elements of a document, each behind the one around it. */
export interface Survey {
  types: ElementType[];
  root: ElementType | undefined;
}

const mostTypes = 3000;
const mostSites = 12_000;
const mostAttributes = 300;
const mostDepth = 48;
const mostValues = 400;
const mostTallied = 96;
/** Longer values are looked at up to here. */
const longestValue = 400;

/** Goes through a document once, in steps. However large or strange it is, what is kept of it is bounded. */
export function* surveyXml(text: string): Steps<Survey> {
  const surveyor = new Surveyor(text);
  yield* scanXmlInSteps(text, surveyor);
  return { types: surveyor.types, root: surveyor.types[0] };
}

/** The value of an attribute or a piece of text as XML means it. */
export function cellAt(text: string, start: number, end: number, isText: boolean, marks = 1): Cell {
  let from = start;
  let to = end;
  if (isText && text.startsWith('<![CDATA[', start)) {
    from += 9;
    to -= text.startsWith(']]>', end - 3) ? 3 : 0;
    const inner = text.slice(from, Math.min(to, from + longestValue));
    const lead = inner.length - inner.trimStart().length;
    const value = inner.trim();
    return { text: value, start: from + lead, end: from + lead + value.length };
  }
  to = Math.min(to, from + longestValue);
  const raw = text.slice(from, to);
  if (isText) return { text: decodeXmlText(raw, undefined, declaredEntities(text)), start: from, end: to };
  return {
    text: marks & ValueMark.encoded ? decodeXmlAttribute(raw, declaredEntities(text)) : raw,
    start: from,
    end: to,
  };
}

class Surveyor implements XmlHandler {
  readonly types: ElementType[] = [];
  readonly #text: string;
  /** The types of the open elements, `undefined` where there are too many; and which element of its type it is. */
  readonly #open: (ElementType | undefined)[] = [];
  readonly #numbers: number[] = [];
  readonly #attributeNames: NamesByNumber;
  /** In which element around it the last element of a type stood, and how many stand there. */
  readonly #runs = new Map<ElementType, { parent: number; count: number }>();
  #sites = 0;
  #elements = 0;
  #type: ElementType | undefined;
  #tooDeep = 0;

  constructor(text: string) {
    this.#text = text;
    this.#attributeNames = new NamesByNumber(text);
  }

  open(tagStart: number, nameStart: number, nameEnd: number): void {
    this.#elements++;
    this.#type = undefined;
    if (this.#open.length >= mostDepth || nameEnd - nameStart > longestName) return;
    const around = this.#open.at(-1);
    if (this.#open.length > 0 && !around) return;
    if (this.#open.length === 0 && this.types.length > 0 && !around) return;
    const name = this.#text.slice(nameStart, nameEnd);
    let type = around?.children.get(name);
    if (!type) {
      if (this.types.length >= mostTypes) return;
      type = {
        name,
        parent: around,
        depth: this.#open.length,
        count: 0,
        mostInParent: 0,
        parents: 0,
        attributes: new Map(),
        text: undefined,
        children: new Map(),
        start: tagStart,
        end: nameEnd,
      };
      this.types.push(type);
      around?.children.set(name, type);
      this.#runs.set(type, { parent: -1, count: 0 });
    }
    type.count++;
    const run = this.#runs.get(type) as { parent: number; count: number };
    const parent = this.#numbers.at(-1) ?? 0;
    run.count = run.parent === parent ? run.count + 1 : 1;
    run.parent = parent;
    if (run.count === 1) type.parents++;
    if (run.count > type.mostInParent) type.mostInParent = run.count;
    this.#type = type;
  }

  attribute(
    attribute: number,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    _number: number,
    marks: number,
  ): void {
    const type = this.#type;
    if (!type || nameEnd - nameStart > longestName) return;
    const name = this.#attributeNames.of(attribute, nameStart, nameEnd);
    let site = type.attributes.get(name);
    if (!site) {
      if (this.#sites >= mostSites || type.attributes.size >= mostAttributes) return;
      this.#sites++;
      site = emptySite();
      type.attributes.set(name, site);
    }
    addValue(site, () => cellAt(this.#text, valueStart, valueEnd, false, marks));
  }

  openEnd(_end: number, empty: boolean): void {
    if (empty) return;
    if (this.#open.length >= mostDepth) {
      this.#tooDeep++;
      return;
    }
    this.#open.push(this.#type);
    this.#numbers.push(this.#elements);
  }

  close(): void {
    if (this.#tooDeep > 0) {
      this.#tooDeep--;
      return;
    }
    this.#open.pop();
    this.#numbers.pop();
  }

  characters(start: number, end: number): void {
    const type = this.#tooDeep > 0 ? undefined : this.#open.at(-1);
    if (!type) return;
    type.text ??= emptySite();
    addValue(type.text, () => cellAt(this.#text, start, end, true));
  }

  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}

function emptySite(): Site {
  return { count: 0, values: [], tally: new Map(), stride: 1 };
}

function addValue(site: Site, cell: () => Cell): void {
  const position = site.count++;
  const { tally } = site;
  if (position % site.stride !== 0 && !tally) return;
  const value = cell();
  if (tally) {
    tally.set(value.text, (tally.get(value.text) ?? 0) + 1);
    if (tally.size > mostTallied) site.tally = undefined;
  }
  if (position % site.stride !== 0) return;
  site.values.push(value);
  if (site.values.length < mostValues) return;
  site.values = site.values.filter((_, at) => at % 2 === 0);
  site.stride *= 2;
}
