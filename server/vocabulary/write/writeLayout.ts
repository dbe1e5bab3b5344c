import { encodeXmlAttribute } from '../../xml/scan/references';
import type { LevelPlaces } from './writePlaces';

/** How an element of a level is laid out where no example shows it: all that can stand in it, in the order of the vocabulary. */
export interface ElementLayout {
  name: string;
  attributes: readonly AttributeLayout[];
  /** The slot of its text, or −1. */
  text: number;
  /** Child elements that hold values. */
  children: readonly ElementLayout[];
  /** The slots of all that stands in it. */
  slots: readonly number[];
}

/** An attribute that can stand in an element. */
export interface AttributeLayout {
  name: string;
  /** From the blank before the name up to the quote that opens the value. */
  lead: string;
  /** The slot of its value, or −1. */
  slot: number;
  /** The value where the slot has none: what tells the element from others of its name. */
  fixed: string | undefined;
}

interface GrowingLayout extends ElementLayout {
  attributes: AttributeLayout[];
  children: GrowingLayout[];
  slots: number[];
  /** What tells it from others of its name. */
  selectors: string;
}

const made = new WeakMap<LevelPlaces, ElementLayout>();

/** The layout of the elements of a level, worked out once. A child element is one for all that stands in it. */
export function layoutOf(level: LevelPlaces): ElementLayout {
  let layout = made.get(level);
  if (!layout) {
    layout = newLayout(level);
    made.set(level, layout);
  }
  return layout;
}

function newLayout({ level, all }: LevelPlaces): ElementLayout {
  const root = emptyLayout(level.element, []);
  for (const { path, slot } of all) {
    let at = root;
    at.slots.push(slot);
    for (const { element, selectors } of path.steps) {
      const key = JSON.stringify(selectors);
      let child = at.children.find((one) => one.name === element && one.selectors === key);
      if (!child) {
        child = emptyLayout(element, selectors);
        at.children.push(child);
      }
      at = child;
      at.slots.push(slot);
    }
    const { attribute } = path;
    if (attribute === undefined) at.text = slot;
    else {
      const known = at.attributes.find(({ name }) => name === attribute);
      if (known) known.slot = slot;
      else at.attributes.push(attributeLayout(attribute, slot, undefined));
    }
  }
  return root;
}

function emptyLayout(name: string, selectors: readonly (readonly [string, string])[]): GrowingLayout {
  return {
    name,
    attributes: selectors.map(([attribute, value]) =>
      attributeLayout(attribute, -1, encodeXmlAttribute(value).text),
    ),
    text: -1,
    children: [],
    slots: [],
    selectors: JSON.stringify(selectors),
  };
}

function attributeLayout(name: string, slot: number, fixed: string | undefined): AttributeLayout {
  return { name, lead: ` ${name}="`, slot, fixed };
}
