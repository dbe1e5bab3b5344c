import type { PlaceStep } from '../places';
import type { EditStyle, ElementInText, StretchChange } from './elementInText';
import { spaceBefore, tailStart } from './elementInText';
import type { NewElement } from './styleElement';
import { elementText } from './styleElement';
import type { StyledElement } from './styleTree';
import { attributeOf, indentationAt, isAtStep } from './styleTree';

/** Adds a child element behind those that stand before it in the example, else behind all that hold values. */
export function childChange(
  within: ElementInText,
  child: NewElement,
  earlier: readonly PlaceStep[],
  style: EditStyle,
): StretchChange {
  const { text, element } = within;
  const { lineEnd, unit } = style;
  const adding = new ChildToAdd(within, child, style);
  const holders = element.children.filter(({ name }) => !style.inner.has(name));
  const before = holders[adding.lastBefore(holders, earlier)];
  if (before) {
    const lead = spaceBefore(text, before.start);
    return { start: before.end, end: before.end, newText: lead + adding.newText(lead) };
  }
  const [first] = holders;
  if (first && adding.isInExample) {
    const lead = spaceBefore(text, first.start);
    return { start: first.start, end: first.start, newText: adding.newText(lead) + lead };
  }
  const line = lineEnd + indentationAt(text, element.start);
  const lead = modelLead(style.example, line, unit) ?? line + unit;
  const close = /[\r\n]/.test(lead) ? line : '';
  const added = lead + adding.newText(lead);
  if (element.isEmpty) {
    const start = tailStart(text, element);
    return { start, end: element.openEnd, newText: `>${added}${close}</${element.name}>` };
  }
  const rest = text.slice(element.openEnd, element.closeStart);
  const tail = /\S/.test(rest) || /[\r\n]/.test(rest) ? '' : close;
  return { start: element.openEnd, end: element.openEnd, newText: added + tail };
}

/** A child that an element is to get, by the children of the example. */
class ChildToAdd {
  readonly #within: ElementInText;
  readonly #child: NewElement;
  readonly #style: EditStyle;
  /** The children of the example, and which of them is the same as the one to add; −1 for none. */
  readonly #models: readonly StyledElement[];
  readonly #wanted: number;

  constructor(within: ElementInText, child: NewElement, style: EditStyle) {
    this.#within = within;
    this.#child = child;
    this.#style = style;
    this.#models = style.example?.element.children ?? [];
    this.#wanted = this.#models.findIndex((one) => this.#isTheChild(one));
  }

  /** Whether the example has the child. */
  get isInExample(): boolean {
    return this.#wanted >= 0;
  }

  /** Which of the present children the new one is to stand behind; −1 for none. */
  lastBefore(holders: readonly StyledElement[], earlier: readonly PlaceStep[]): number {
    let last = holders.findLastIndex((one) => this.#isBefore(one));
    while (this.isInExample && this.#isEarlier(holders[last + 1], earlier)) last++;
    return last;
  }

  /** The text of the child as others like it are written, behind the white space that goes before it. */
  newText(lead: string): string {
    const { text, element } = this.#within;
    const { unit, lineEnd } = this.#style;
    const like = this.#like();
    return elementText(this.#child, {
      example: like?.element,
      text: like?.text ?? '',
      indentation: /[\r\n]([ \t]*)$/.exec(lead)?.[1] ?? indentationAt(text, element.start),
      unit,
      lineEnd,
    });
  }

  get #exampleText(): string {
    return this.#style.example?.text ?? '';
  }

  #isTheChild(one: StyledElement): boolean {
    const { name, selectors, attributes } = this.#child;
    return (
      one.name === name &&
      selectors.every((selector) => {
        const value = selectorValue(this.#exampleText, one, selector);
        return value !== undefined && value === attributes.get(selector);
      })
    );
  }

  #isBefore(one: StyledElement): boolean {
    if (!this.isInExample) return true;
    const { selectors } = this.#child;
    const at = this.#models.findIndex(
      (other) =>
        other.name === one.name &&
        selectors.every(
          (name) =>
            selectorValue(this.#within.text, one, name) === selectorValue(this.#exampleText, other, name),
        ),
    );
    return at >= 0 && at < this.#wanted;
  }

  /** Whether a child that the example lacks stands before the new one in the vocabulary. */
  #isEarlier(one: StyledElement | undefined, earlier: readonly PlaceStep[]): boolean {
    if (!one) return false;
    const isInExample = this.#models.some((other) => other.name === one.name);
    if (isInExample && this.#child.selectors.length === 0) return false;
    return earlier.some((step) => isAtStep(this.#within.text, one, step));
  }

  #like(): ElementInText | undefined {
    const { name } = this.#child;
    const model = this.#models[this.#wanted] ?? this.#models.findLast((one) => one.name === name);
    if (model) return { text: this.#exampleText, element: model };
    const { text, element } = this.#within;
    const sibling = element.children.findLast((one) => one.name === name && !this.#style.inner.has(name));
    return sibling && { text, element: sibling };
  }
}

function selectorValue(text: string, element: StyledElement, name: string): string | undefined {
  const found = attributeOf(element, name);
  return found && text.slice(found.valueStart, found.valueEnd);
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
