import { decodeXmlAttribute, encodeXmlAttribute } from '../../xml/scan/references';
import type { StyledElement } from './styleTree';
import { attributeOf, indentationAt } from './styleTree';

/** An element to be written: what is in it, not how it looks. */
export interface NewElement {
  name: string;
  attributes: Map<string, string>;
  /** Attributes that tell it from others of its name. */
  selectors: readonly string[];
  children: NewElement[];
  text: string | undefined;
}

/** How an element is to look. */
export interface ElementStyle {
  /** An element of the kind, whose order of attributes and children, quotes and white space are taken over. */
  example: StyledElement | undefined;
  /** The text that the example stands in. */
  text: string;
  /** What stands before the element on its line. */
  indentation: string;
  /** One step of indentation. */
  unit: string;
  lineEnd: string;
}

/** An element with nothing in it. */
export function emptyElement(name: string): NewElement {
  return { name, attributes: new Map(), selectors: [], children: [], text: undefined };
}

/** An element as text in a style, without white space around it. Attributes and children that the example lacks come last. */
export function elementText(element: NewElement, style: ElementStyle, inner?: string): string {
  const { example } = style;
  const { tag, tail } = startTag(element, style);
  const hasContent = element.children.length > 0 || element.text !== undefined || inner !== undefined;
  if (!hasContent) {
    const spelledOut =
      example && !example.isEmpty && example.children.length + example.characters.length === 0;
    return spelledOut
      ? `${tag}${tail}></${element.name}>`
      : `${tag}${example?.isEmpty || /[\r\n]/.test(tail) ? tail : ''}/>`;
  }
  const opened = `${tag}${example?.isEmpty ? '' : tail}>`;
  const { content, closeLead } = contentText(element, style);
  const within = inner === undefined ? content + closeLead : content + inner;
  return `${opened}${within}</${element.name}>`;
}

/** White space of an example with its line breaks and indentation fitted to the place of the new text. */
function fitted(space: string, style: ElementStyle): string {
  if (/[^ \t\r\n]/.test(space)) return ' ';
  const own = style.example ? indentationAt(style.text, style.example.start) : '';
  return space.replace(/(?:\r\n|\r|\n)([ \t]*)(?![ \t]*[\r\n])/g, (_, indentation: string) => {
    const rest = indentation.startsWith(own) ? indentation.slice(own.length) : style.unit;
    return style.lineEnd + style.indentation + rest;
  });
}

function startTag(element: NewElement, style: ElementStyle): { tag: string; tail: string } {
  const { example, text } = style;
  const model = example?.attributes ?? [];
  const place = (name: string) => {
    const at = model.findIndex((one) => one.name === name);
    return at < 0 ? model.length : at;
  };
  const names = [...element.attributes.keys()].sort((a, b) => place(a) - place(b));
  const leadOf = (at: number) => {
    const attribute = model[at];
    if (!example || !attribute) return ' ';
    const before = at === 0 ? example.nameEnd : (model[at - 1]?.end ?? attribute.start);
    return fitted(text.slice(before, attribute.start), style) || ' ';
  };
  let tag = `<${element.name}`;
  names.forEach((name, position) => {
    const at = place(name);
    const like = Math.min(at, model.length - 1);
    const lead = leadOf(position === 0 ? 0 : like);
    tag += lead + attributeText(name, element.attributes.get(name) ?? '', style, like);
  });
  const tail = example
    ? text.slice(model[model.length - 1]?.end ?? example.nameEnd, example.openEnd - (example.isEmpty ? 2 : 1))
    : '';
  return { tag, tail: /[^ \t\r\n]/.test(tail) ? '' : fitted(tail, style) };
}

function attributeText(name: string, value: string, { example, text }: ElementStyle, like: number): string {
  const model = example?.attributes[like];
  const equals = model && model.quote !== '' ? text.slice(model.nameEnd, model.open) : '=';
  const quote = model && model.quote !== '' ? model.quote : '"';
  return `${name}${/^\s*=\s*$/.test(equals) ? equals : '='}${quote}${encodedFor(quote, value)}${quote}`;
}

/** A value ready to stand between quotes of a kind. */
export function encodedFor(quote: string, value: string): string {
  const { text } = encodeXmlAttribute(value);
  return quote === "'" ? text.replaceAll('&quot;', '"').replaceAll("'", '&apos;') : text;
}

/** A value ready to stand as the text of an element. */
export function encodedElementText(value: string): string {
  return encodeXmlAttribute(value).text.replaceAll('&quot;', '"').replaceAll('>', '&gt;');
}

function contentText(element: NewElement, style: ElementStyle): { content: string; closeLead: string } {
  const { example, text } = style;
  if (element.children.length === 0) {
    const value = encodedElementText(element.text ?? '');
    if (!example || example.children.length > 0 || example.characters.length !== 1) {
      return { content: value, closeLead: '' };
    }
    const raw = text.slice(example.openEnd, example.closeStart);
    return {
      content: fitted(/^\s*/.exec(raw)?.[0] ?? '', style) + value,
      closeLead: fitted(/\s*$/.exec(raw)?.[0] ?? '', style),
    };
  }
  const models = example?.children ?? [];
  const matches = new Map(element.children.map((child) => [child, matchOf(child, models, text)]));
  const place = (child: NewElement) => {
    const at = matches.get(child) ?? -1;
    return at < 0 ? models.length : at;
  };
  const children = [...element.children].sort((a, b) => place(a) - place(b));
  let content = element.text === undefined ? '' : encodedElementText(element.text);
  let broken = false;
  children.forEach((child, position) => {
    const at = position === 0 ? 0 : Math.min(place(child), models.length - 1);
    const lead = childLead(at, style);
    broken ||= /[\r\n]/.test(lead);
    const indentation = /[\r\n]([ \t]*)$/.exec(lead)?.[1] ?? style.indentation;
    const model = models[place(child)] ?? models.findLast(({ name }) => name === child.name);
    content += lead + elementText(child, { ...style, example: model, indentation });
  });
  const close =
    example && models.length > 0
      ? fitted(/\s*$/.exec(text.slice(example.openEnd, example.closeStart))?.[0] ?? '', style)
      : style.lineEnd + style.indentation;
  return { content, closeLead: models.length > 0 || broken ? close : '' };
}

/** The position of the example's child that a new child is like, or −1. */
function matchOf(child: NewElement, models: readonly StyledElement[], text: string): number {
  return models.findIndex(
    (model) =>
      model.name === child.name &&
      child.selectors.every((name) => {
        const attribute = attributeOf(model, name);
        return (
          attribute !== undefined &&
          decodeXmlAttribute(text.slice(attribute.valueStart, attribute.valueEnd)) ===
            child.attributes.get(name)
        );
      }),
  );
}

/** The white space before the child at a position of the example; a line of its own where there is none. */
function childLead(at: number, style: ElementStyle): string {
  const child = style.example?.children[at];
  if (!child) return standsInLine(style) ? '' : style.lineEnd + style.indentation + style.unit;
  let start = child.start;
  while (start > 0 && /\s/.test(style.text[start - 1])) start--;
  return fitted(style.text.slice(start, child.start), style);
}

/** Whether the example stands in one line with what is around it. */
function standsInLine({ example, text }: ElementStyle): boolean {
  if (!example || /[\r\n]/.test(text.slice(example.start, example.end))) return false;
  const before = text.slice(Math.max(0, example.start - 200), example.start);
  return !/(?:^|[\r\n])[ \t]*$/.test(before);
}
