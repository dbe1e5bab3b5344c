import type { NewElement } from '../edit/styleElement';
import { emptyElement } from '../edit/styleElement';
import type { PlacePath } from '../places';
import type { PlacedText } from './writeValues';

/** An element of a level with texts in their places; a child element is made once for all that stands in it. */
export function filledElement(
  name: string,
  texts: readonly Pick<PlacedText, 'place' | 'text'>[],
): NewElement {
  const element = emptyElement(name);
  for (const { place, text } of texts) putText(element, place.path, text);
  return element;
}

/** Puts a text into an element where a path leads to. */
export function putText(element: NewElement, { steps, attribute }: PlacePath, text: string): void {
  let at = element;
  for (const { element: name, selectors } of steps) {
    const isIt = (child: NewElement) =>
      child.name === name &&
      child.selectors.length === selectors.length &&
      selectors.every(([selector, value]) => child.attributes.get(selector) === value);
    let child = at.children.find(isIt);
    if (!child) {
      child = {
        ...emptyElement(name),
        attributes: new Map(selectors),
        selectors: selectors.map(([selector]) => selector),
      };
      at.children.push(child);
    }
    at = child;
  }
  if (attribute === undefined) at.text = text;
  else at.attributes.set(attribute, text);
}
