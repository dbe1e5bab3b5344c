import { spaceEndAt } from '../../xml/scan/characters';
import type { XmlHandler } from '../../xml/scan/handler';
import { quoteBefore } from '../../xml/scan/quotes';
import { decodeXmlAttribute } from '../../xml/scan/references';
import { scanXml } from '../../xml/scan/scan';
import type { PlacePath, PlaceStep } from '../places';

/** An attribute by its offsets in the text. */
export interface AttributeText {
  name: string;
  start: number;
  nameEnd: number;
  /** The quote that opens the value; empty where there is none. */
  quote: string;
  /** Where that quote stands, or where the value starts. */
  open: number;
  /** The value without blanks around it. */
  valueStart: number;
  valueEnd: number;
  /** Behind the closing quote. */
  end: number;
}

/** An element by its offsets in the text, with what stands in it. */
export interface StyledElement {
  name: string;
  start: number;
  nameEnd: number;
  attributes: AttributeText[];
  /** Behind its start tag. */
  openEnd: number;
  /** Whether its start tag ends in `/>`. */
  isEmpty: boolean;
  /** Where its end tag starts; the end of the element where it has none. */
  closeStart: number;
  end: number;
  children: StyledElement[];
  /** Text other than white space that stands in it directly. */
  characters: { start: number; end: number }[];
  /** Comments and instructions that stand in it directly. */
  remarks: { start: number; end: number }[];
  parent: StyledElement | undefined;
}

/** The elements of a text as a tree, whose root holds the outermost element; never throws. */
export function elementTree(text: string): StyledElement {
  const tree = new TreeMaker(text);
  scanXml(text, tree);
  return tree.root;
}

function newElement(name: string, start: number, nameEnd: number, parent?: StyledElement): StyledElement {
  return {
    name,
    start,
    nameEnd,
    attributes: [],
    openEnd: nameEnd,
    isEmpty: false,
    closeStart: nameEnd,
    end: nameEnd,
    children: [],
    characters: [],
    remarks: [],
    parent,
  };
}

class TreeMaker implements XmlHandler {
  readonly root: StyledElement;
  readonly #text: string;
  #innermost: StyledElement;
  #tag: StyledElement;

  constructor(text: string) {
    this.#text = text;
    this.root = newElement('', 0, 0);
    this.root.closeStart = text.length;
    this.root.end = text.length;
    this.#innermost = this.root;
    this.#tag = this.root;
  }

  open(tagStart: number, nameStart: number, nameEnd: number): void {
    this.#tag = newElement(this.#text.slice(nameStart, nameEnd), tagStart, nameEnd, this.#innermost);
    this.#innermost.children.push(this.#tag);
  }

  attribute(_name: number, nameStart: number, nameEnd: number, valueStart: number, valueEnd: number): void {
    const text = this.#text;
    const quote = quoteBefore(text, valueStart);
    const close = spaceEndAt(text, valueEnd);
    this.#tag.attributes.push({
      name: text.slice(nameStart, nameEnd),
      start: nameStart,
      nameEnd,
      quote,
      open: quote === '' ? valueStart : text.lastIndexOf(quote, valueStart - 1),
      valueStart,
      valueEnd,
      end: quote !== '' && text[close] === quote ? close + 1 : valueEnd,
    });
  }

  openEnd(end: number, empty: boolean): void {
    this.#tag.openEnd = end;
    this.#tag.isEmpty = empty;
    this.#tag.closeStart = end;
    this.#tag.end = end;
    if (!empty) this.#innermost = this.#tag;
  }

  close(start: number, end: number): void {
    const element = this.#innermost;
    if (!element.parent) return;
    element.closeStart = Math.max(element.openEnd, start);
    element.end = Math.max(element.openEnd, end);
    this.#innermost = element.parent;
  }

  characters(start: number, end: number): void {
    this.#innermost.characters.push({ start, end });
  }

  comment(start: number, end: number): void {
    this.#innermost.remarks.push({ start, end });
  }

  instruction(start: number, end: number): void {
    this.#innermost.remarks.push({ start, end });
  }

  doctype(start: number, end: number): void {
    this.#innermost.remarks.push({ start, end });
  }

  problem(): void {}
}

/** An attribute of an element; the last one of its name counts. */
export function attributeOf(element: StyledElement, name: string): AttributeText | undefined {
  return element.attributes.findLast((one) => one.name === name);
}

/** The last child element that a step of a place leads to. */
export function childAt(text: string, element: StyledElement, step: PlaceStep): StyledElement | undefined {
  return element.children.findLast((child) => isAtStep(text, child, step));
}

/** Whether an element is one that a step leads to. */
export function isAtStep(
  text: string,
  element: StyledElement,
  { element: name, selectors }: PlaceStep,
): boolean {
  return (
    element.name === name &&
    selectors.every(([attribute, value]) => {
      const found = attributeOf(element, attribute);
      return (
        found !== undefined && decodeXmlAttribute(text.slice(found.valueStart, found.valueEnd)) === value
      );
    })
  );
}

/** Where the value of a place stands in an element; `undefined` where the element does not have it. */
export function valueAt(
  text: string,
  element: StyledElement,
  path: PlacePath,
): { element: StyledElement; attribute: AttributeText | undefined; start: number; end: number } | undefined {
  let at: StyledElement | undefined = element;
  for (const step of path.steps) {
    at = childAt(text, at, step);
    if (!at) return undefined;
  }
  if (path.attribute === undefined) {
    const first = at.characters[0];
    const last = at.characters[at.characters.length - 1];
    return first && last && { element: at, attribute: undefined, start: first.start, end: last.end };
  }
  const attribute = attributeOf(at, path.attribute);
  return attribute && { element: at, attribute, start: attribute.valueStart, end: attribute.valueEnd };
}

/** The white space at the start of the line that an offset stands in, where nothing else stands before it; else that of the line. */
export function indentationAt(text: string, offset: number): string {
  let lineStart = offset;
  while (lineStart > 0 && text[lineStart - 1] !== '\n' && text[lineStart - 1] !== '\r') lineStart--;
  let end = lineStart;
  while (text[end] === ' ' || text[end] === '\t') end++;
  return text.slice(lineStart, Math.min(end, offset));
}
