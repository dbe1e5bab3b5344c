import type { PlacePath, PlaceStep } from '../places';
import { putText } from '../write/writeElements';
import type { WritingPlace } from '../write/writePlaces';
import type { ElementStyle, NewElement } from './styleElement';
import { elementText, emptyElement, encodedFor, encodedText } from './styleElement';
import type { AttributeText, ElementText } from './styleTree';
import { attributeOf, childAt, indentationAt, isAtStep, valueAt } from './styleTree';

/** A change of one stretch of a text. */
export interface TextChange {
  start: number;
  end: number;
  newText: string;
}

/** An element in the text that it stands in. */
export interface ElementInText {
  text: string;
  element: ElementText;
}

/** What an element that is changed goes by. */
export interface EditStyle {
  /** The places of its level, in the order of the vocabulary. */
  places: readonly WritingPlace[];
  /** An element of the same level that has the value, whose order is followed. */
  example: ElementInText | undefined;
  /** Names of child elements that hold other levels: values stand before these. */
  inner: ReadonlySet<string>;
  unit: string;
  lineEnd: string;
}

/** The change that gives the place of a path a text, where one stands there or where the example has it. */
export function setChange(
  { text, element }: ElementInText,
  path: PlacePath,
  value: string,
  style: EditStyle,
): TextChange {
  const found = valueAt(text, element, path);
  if (found) {
    const { attribute, start, end } = found;
    const newText = attribute ? encodedFor(attribute.quote, value) : encodedText(value);
    return { start, end, newText: attribute?.quote === '' ? `"${newText}"` : newText };
  }
  let at = element;
  let like = style.example;
  const steps = [...path.steps];
  for (let step = steps[0]; step; step = steps[0]) {
    const child = childAt(text, at, step);
    if (!child) break;
    const model: ElementText | undefined = like && childAt(like.text, like.element, step);
    like = like && model && { text: like.text, element: model };
    at = child;
    steps.shift();
  }
  const within = { text, element: at };
  const done = path.steps.slice(0, path.steps.length - steps.length);
  const inSame = style.places.filter((one) =>
    done.every((step, depth) => isSameStep(one.path.steps[depth], step)),
  );
  const [next] = steps;
  if (next) {
    const holder = emptyElement('');
    putText(holder, { steps, attribute: path.attribute }, value);
    const usual = inSame.flatMap((one) => one.path.steps[done.length] ?? []);
    const rank = usual.findIndex((one) => isSameStep(one, next));
    const earlier = rank < 0 ? [] : usual.slice(0, rank);
    return childChange(within, holder.children[0], earlier, { ...style, example: like });
  }
  if (path.attribute !== undefined) {
    const usual = inSame.filter((one) => one.path.steps.length === done.length);
    const rank = usual.findIndex((one) => one.path.attribute === path.attribute);
    const earlier = new Set(usual.slice(0, Math.max(0, rank)).map((one) => one.path.attribute));
    return attributeChange(within, path.attribute, value, earlier, like);
  }
  return textChange(within, encodedText(value));
}

function isSameStep(one: PlaceStep | undefined, other: PlaceStep): boolean {
  return (
    one?.element === other.element &&
    one.selectors.length === other.selectors.length &&
    one.selectors.every(([name, value], at) => {
      const [otherName, otherValue] = other.selectors[at] ?? [];
      return name === otherName && value === otherValue;
    })
  );
}

/**
 * Adds an attribute behind the one that stands before it in the example; at the end where the example lacks it. `earlier`
 * are those that stand before it in the vocabulary.
 */
function attributeChange(
  { text, element }: ElementInText,
  name: string,
  value: string,
  earlier: ReadonlySet<string | undefined>,
  example: ElementInText | undefined,
): TextChange {
  const { attributes } = element;
  const order = example?.element.attributes.map((one) => one.name) ?? [];
  const wanted = order.indexOf(name);
  const isBefore = (one: AttributeText) => {
    const at = order.indexOf(one.name);
    return wanted < 0 || (at >= 0 && at < wanted);
  };
  let after = attributes.findLastIndex(isBefore);
  const isEarlier = (one: AttributeText | undefined) =>
    one !== undefined && !order.includes(one.name) && earlier.has(one.name);
  while (isEarlier(attributes[after + 1])) after++;
  const before = attributes[after];
  const next = attributes[after + 1] ?? before;
  const quote = (next ?? before)?.quote || '"';
  const position = before?.end ?? element.nameEnd;
  const lead = next ? leadOf(text, element, next) : ' ';
  return {
    start: position,
    end: position,
    newText: `${lead}${name}=${quote}${encodedFor(quote, value)}${quote}`,
  };
}

/** The white space before an attribute. */
function leadOf(text: string, element: ElementText, attribute: AttributeText): string {
  const at = element.attributes.indexOf(attribute);
  const start = element.attributes[at - 1]?.end ?? element.nameEnd;
  const lead = text.slice(start, attribute.start);
  return lead !== '' && lead.trim() === '' ? lead : ' ';
}

function textChange({ text, element }: ElementInText, value: string): TextChange {
  if (!element.isEmpty) return { start: element.openEnd, end: element.openEnd, newText: value };
  const start = tailStart(text, element);
  return { start, end: element.openEnd, newText: `>${value}</${element.name}>` };
}

/** Where the white space before a `/>` starts. */
function tailStart(text: string, element: ElementText): number {
  let start = element.openEnd - 2;
  while (start > element.nameEnd && /\s/.test(text[start - 1])) start--;
  return start;
}

/** Adds a child element behind those that stand before it in the example, else behind all that hold values. */
function childChange(
  { text, element }: ElementInText,
  child: NewElement,
  earlier: readonly PlaceStep[],
  style: EditStyle,
): TextChange {
  const { example, lineEnd, unit } = style;
  const models = example?.element.children ?? [];
  const isLike = (one: ElementText, ofText: string, other: NewElement) =>
    one.name === other.name &&
    other.selectors.every((name) => {
      const found = attributeOf(one, name);
      return found && ofText.slice(found.valueStart, found.valueEnd) === other.attributes.get(name);
    });
  const wanted = models.findIndex((one) => isLike(one, example?.text ?? '', child));
  const model = models[wanted] ?? models.findLast(({ name }) => name === child.name);
  const own = element.children;
  const holders = own.filter(({ name }) => !style.inner.has(name));
  const isBefore = (one: ElementText) => {
    if (wanted < 0) return true;
    const at = models.findIndex(
      (other) =>
        other.name === one.name &&
        child.selectors.every(
          (name) => selectorValue(text, one, name) === selectorValue(example?.text ?? '', other, name),
        ),
    );
    return at >= 0 && at < wanted;
  };
  let last = holders.findLastIndex(isBefore);
  const isEarlier = (one: ElementText | undefined) =>
    one !== undefined &&
    !models.some((other) => other.name === one.name && child.selectors.length === 0) &&
    earlier.some((step) => isAtStep(text, one, step));
  while (wanted >= 0 && isEarlier(holders[last + 1])) last++;
  const before = holders[last];
  const indentation = indentationAt(text, element.start);
  const newText = (lead: string, example_: ElementInText | undefined) => {
    const look: ElementStyle = {
      example: example_?.element,
      text: example_?.text ?? '',
      indentation: /[\r\n]([ \t]*)$/.exec(lead)?.[1] ?? indentation,
      unit,
      lineEnd,
    };
    return elementText(child, look);
  };
  const sibling = holders.findLast(({ name }) => name === child.name);
  const like: ElementInText | undefined =
    model && example ? { text: example.text, element: model } : sibling && { text, element: sibling };
  if (before) {
    const lead = spaceBefore(text, before.start);
    return { start: before.end, end: before.end, newText: lead + newText(lead, like) };
  }
  const [first] = holders;
  if (first && wanted >= 0) {
    const lead = spaceBefore(text, first.start);
    return { start: first.start, end: first.start, newText: newText(lead, like) + lead };
  }
  const lead = modelLead(example, lineEnd + indentation, unit) ?? lineEnd + indentation + unit;
  const close = /[\r\n]/.test(lead) ? lineEnd + indentation : '';
  if (element.isEmpty) {
    const start = tailStart(text, element);
    return {
      start,
      end: element.openEnd,
      newText: `>${lead}${newText(lead, like)}${close}</${element.name}>`,
    };
  }
  const rest = text.slice(element.openEnd, element.closeStart);
  const tail = /\S/.test(rest) || /[\r\n]/.test(rest) ? '' : close;
  return { start: element.openEnd, end: element.openEnd, newText: lead + newText(lead, like) + tail };
}

function selectorValue(text: string, element: ElementText, name: string): string | undefined {
  const found = attributeOf(element, name);
  return found && text.slice(found.valueStart, found.valueEnd);
}

function spaceBefore(text: string, offset: number): string {
  let start = offset;
  while (start > 0 && /\s/.test(text[start - 1])) start--;
  return text.slice(start, offset);
}

/** What stands before the first child of the example, at another indentation. */
function modelLead(example: ElementInText | undefined, line: string, unit: string): string | undefined {
  const child = example?.element.children[0];
  if (!example || !child) return undefined;
  const lead = spaceBefore(example.text, child.start);
  const broken = /[\r\n]([ \t]*)$/.exec(lead);
  if (!broken) return lead;
  const own = indentationAt(example.text, example.element.start);
  const inside = broken[1];
  return line + (inside.startsWith(own) ? inside.slice(own.length) : unit);
}

/** The change that takes the text at the place of a path out, with a child element that holds nothing else. */
export function removeChange({ text, element }: ElementInText, path: PlacePath): TextChange | undefined {
  const found = valueAt(text, element, path);
  if (!found) return undefined;
  let holder = found.element;
  const isBare = () => {
    const step = path.steps[depthOf(holder, element) - 1];
    const selectors = new Set(step?.selectors.map(([name]) => name));
    const others = holder.attributes.filter((one) => one !== found.attribute && !selectors.has(one.name));
    const texts = found.attribute || holder !== found.element ? holder.characters.length : 0;
    return others.length === 0 && texts === 0;
  };
  if (holder !== element && holder.children.length === 0 && holder.remarks.length === 0 && isBare()) {
    while (
      holder.parent &&
      holder.parent !== element &&
      holder.parent.children.length === 1 &&
      holder.parent.attributes.length + holder.parent.characters.length + holder.parent.remarks.length === 0
    ) {
      holder = holder.parent;
    }
    const start = holder.start - spaceBefore(text, holder.start).length;
    return { start, end: holder.end, newText: '' };
  }
  if (!found.attribute) return { start: found.start, end: found.end, newText: '' };
  const start = found.attribute.start - spaceBefore(text, found.attribute.start).length;
  return { start, end: found.attribute.end, newText: '' };
}

function depthOf(element: ElementText, outer: ElementText): number {
  let depth = 0;
  for (let at: ElementText | undefined = element; at && at !== outer; at = at.parent) depth++;
  return depth;
}

/** A text with a change made. */
export function changedText(text: string, { start, end, newText }: TextChange): string {
  return text.slice(0, start) + newText + text.slice(end);
}
