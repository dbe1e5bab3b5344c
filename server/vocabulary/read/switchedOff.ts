import type { Steps } from '../../model/steps';
import { declaredEntities } from '../../xml/declaredEntities';
import type { XmlHandler } from '../../xml/scan/handler';
import { decodeXmlAttribute, decodeXmlText } from '../../xml/scan/references';
import { scanXmlInSteps } from '../../xml/scan/scan';
import type { PlacePath } from '../places';
import { parsePlace } from '../places';
import type { SwitchedOff } from '../vocabulary';

/** How an element is switched off: where the value stands that says so. */
export interface OffElement {
  rule: SwitchedOff;
  /** The value as it is written, and its place in the text. */
  value: string;
  start: number;
  end: number;
}

/** The elements of a text that are switched off, by where their tags start; worked out in steps. */
export function* switchedOffIn(
  text: string,
  rules: readonly SwitchedOff[],
): Steps<ReadonlyMap<number, OffElement>> {
  const look = new OffLook(text, rules);
  if (look.hasRules) yield* scanXmlInSteps(text, look);
  return look.found;
}

interface Rule {
  rule: SwitchedOff;
  place: PlacePath;
  words: ReadonlySet<string>;
  /** Whether the element is off where nothing stands in the place. */
  isOffEmpty: boolean;
}

/** An element that is open. */
interface OpenElement {
  name: string;
  start: number;
  /** Where its name ends. */
  end: number;
  /** Where places go by these. */
  attributes: Map<string, string> | undefined;
  /** The rules in whose place something stands. */
  filled: Set<Rule> | undefined;
}

class OffLook implements XmlHandler {
  readonly found = new Map<number, OffElement>();
  readonly #text: string;
  readonly #rules: Rule[];
  /** The elements that are open, the one whose tag is being read too. */
  readonly #open: OpenElement[] = [];
  readonly #hasSelectors: boolean;
  /** The attributes of the tag that is being read that could switch something. */
  #found: { name: string; value: string; start: number; end: number }[] = [];

  constructor(text: string, rules: readonly SwitchedOff[]) {
    this.#text = text;
    this.#rules = rules.flatMap((rule) => {
      const place = parsePlace(rule.at);
      const words = new Set(rule.words.map(folded));
      // That nothing stands there is known where the element ends.
      const isOffEmpty = words.delete('');
      return place ? [{ rule, place, words, isOffEmpty }] : [];
    });
    this.#hasSelectors = this.#rules.some(({ place }) =>
      place.steps.some(({ selectors }) => selectors.length > 0),
    );
  }

  get hasRules(): boolean {
    return this.#rules.length > 0;
  }

  open(tagStart: number, nameStart: number, nameEnd: number): void {
    const attributes = this.#hasSelectors ? new Map<string, string>() : undefined;
    const name = this.#text.slice(nameStart, nameEnd);
    const filled = this.#rules.some(({ isOffEmpty, rule }) => isOffEmpty && rule.element === name)
      ? new Set<Rule>()
      : undefined;
    this.#open.push({ name, start: tagStart, end: nameEnd, attributes, filled });
    this.#found = [];
  }

  attribute(_name: number, nameStart: number, nameEnd: number, start: number, end: number): void {
    const name = this.#text.slice(nameStart, nameEnd);
    const isTold = this.#rules.some(({ place }) => place.attribute === name);
    if (!isTold && !this.#hasSelectors) return;
    const value = decodeXmlAttribute(this.#text.slice(start, end), declaredEntities(this.#text));
    this.#open.at(-1)?.attributes?.set(name, value);
    if (isTold) this.#found.push({ name, value, start, end });
  }

  openEnd(_end: number, empty: boolean): void {
    for (const { name, value, start, end } of this.#found) this.#look(name, value, start, end);
    this.#found = [];
    if (empty) this.close();
  }

  close(): void {
    const element = this.#open.pop();
    if (!element?.filled || this.found.has(element.start)) return;
    const { name, start, end, filled } = element;
    const rule = this.#rules.find(
      (one) => one.isOffEmpty && one.rule.element === name && !filled.has(one),
    )?.rule;
    if (rule) this.found.set(start, { rule, value: '', start, end });
  }

  characters(start: number, end: number): void {
    if (this.#rules.some(({ place }) => place.attribute === undefined))
      this.#look(
        undefined,
        decodeXmlText(this.#text.slice(start, end), undefined, declaredEntities(this.#text)),
        start,
        end,
      );
  }

  #look(attribute: string | undefined, value: string, start: number, end: number): void {
    for (const one of this.#rules) {
      const { rule, place, words, isOffEmpty } = one;
      const said = folded(value);
      const isFilled = isOffEmpty && said !== '';
      if (place.attribute !== attribute || (!words.has(said) && !isFilled)) continue;
      const at = this.#open.length - 1 - place.steps.length;
      const holder = this.#open[at];
      const isOnWay = place.steps.every(({ element, selectors }, step) => {
        const inner = this.#open[at + 1 + step];
        return (
          inner?.name === element &&
          selectors.every(([name, wanted]) => inner.attributes?.get(name) === wanted)
        );
      });
      if (holder?.name !== rule.element || !isOnWay) continue;
      if (isFilled) holder.filled?.add(one);
      if (!words.has(said) || this.found.has(holder.start)) continue;
      this.found.set(holder.start, { rule, value: value.trim(), start, end });
    }
  }

  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}

function folded(word: string): string {
  return word.trim().toLowerCase();
}
