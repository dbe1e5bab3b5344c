import { isXmlName } from '../xml/scan/characters';
import type { Vocabulary } from './vocabulary';

/**
 * Whether a vocabulary names no element to hold a whole text: its outermost level is one of many. XML has one outermost
 * element (XML 1.0, fifth edition, section 2.1), so that any element may stand around the others.
 */
export function lacksOutermostElement({ levels }: Vocabulary): boolean {
  const [outermost] = levels;
  return outermost !== undefined && outermost.is !== 'instrument' && (outermost.inside ?? []).length === 0;
}

/** The name of the element that is written around a text in a vocabulary that names none: that of the vocabulary, as XML can have it. */
export function outermostElementOf({ name, levels }: Vocabulary): string {
  const taken = new Set(levels.flatMap(({ element, inside = [] }) => [element, ...inside]));
  const words = name
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .join('-');
  // Names that start with these letters are reserved: XML 1.0, section 2.3.
  let element = isXmlName(words) && !words.startsWith('xml') ? words : 'instrument';
  while (taken.has(element)) element += '-instrument';
  return element;
}
