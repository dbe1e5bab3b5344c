import type { PlacePath, PlaceStep } from '../places';
import { putText } from '../write/writeElements';
import { childChange } from './addChild';
import type { EditStyle, ElementInText, StretchChange } from './elementInText';
import { spaceBefore, tailStart } from './elementInText';
import { emptyElement, encodedElementText, encodedFor } from './styleElement';
import type { AttributeText, StyledElement } from './styleTree';
import { childAt, valueAt } from './styleTree';

/** The change that gives the place of a path a text, where one stands there or where the example has it. */
export function setChange(
  { text, element }: ElementInText,
  path: PlacePath,
  value: string,
  style: EditStyle,
): StretchChange {
  const found = valueAt(text, element, path);
  if (found) {
    const { attribute, start, end } = found;
    const newText = attribute ? encodedFor(attribute.quote, value) : encodedElementText(value);
    return { start, end, newText: attribute?.quote === '' ? `"${newText}"` : newText };
  }
  let at = element;
  let like = style.example;
  const steps = [...path.steps];
  for (let step = steps[0]; step; step = steps[0]) {
    const child = childAt(text, at, step);
    if (!child) break;
    const model: StyledElement | undefined = like && childAt(like.text, like.element, step);
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
  return textChange(within, encodedElementText(value));
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
): StretchChange {
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
function leadOf(text: string, element: StyledElement, attribute: AttributeText): string {
  const at = element.attributes.indexOf(attribute);
  const start = element.attributes[at - 1]?.end ?? element.nameEnd;
  const lead = text.slice(start, attribute.start);
  return lead !== '' && lead.trim() === '' ? lead : ' ';
}

function textChange({ text, element }: ElementInText, value: string): StretchChange {
  if (!element.isEmpty) return { start: element.openEnd, end: element.openEnd, newText: value };
  const start = tailStart(text, element);
  return { start, end: element.openEnd, newText: `>${value}</${element.name}>` };
}

/** The change that takes the text at the place of a path out, with a child element that holds nothing else. */
export function removeChange({ text, element }: ElementInText, path: PlacePath): StretchChange | undefined {
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

function depthOf(element: StyledElement, outer: StyledElement): number {
  let depth = 0;
  for (let at: StyledElement | undefined = element; at && at !== outer; at = at.parent) depth++;
  return depth;
}
