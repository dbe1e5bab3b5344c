import { replacing } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { mainSpan } from '../../model/text/span';
import { nameWords } from '../infer/words/nameWords';
import { conceptsOf } from '../infer/words/tradeWords';
import type { Vocabulary } from '../vocabulary';
import { plainText } from './listEntries';
import type { AttributeText, StyledElement } from './styleTree';
import { attributeOf, elementTree } from './styleTree';

/** Further words for numbers of things; from memory. */
const countWords: ReadonlySet<string> = new Set(
  'amount size length quantity entries items members elements children anzahl menge nombre cantidad cuenta quantita aantal antal liczba pocet'.split(
    ' ',
  ),
);

/** What an attribute counts: the elements of a name that stand directly in its own, or all of these where none is named. */
interface ChildCount {
  attribute: string;
  child: string | undefined;
}

/** The attributes of a vocabulary's elements that hold parameters, which count no elements. */
function parametersOf({ levels }: Vocabulary): ReadonlySet<string> {
  return new Set(levels.flatMap(({ element, parameters }) => parameters.map(({ at }) => `${element} ${at}`)));
}

/**
 * The edits that keep numbers true which say how many elements stand in theirs: where each element at one place in the nesting says so in
 * the text before, those there in the text after get the number of theirs.
 */
export function countEdits(vocabulary: Vocabulary, before: Instrument, after: Instrument): TextEdit[] {
  const read = parametersOf(vocabulary);
  const text = after.sources[0]?.text ?? '';
  const old = before.sources[0]?.text ?? '';
  const counts = new Map<string, ChildCount[]>();
  for (const [place, elements] of elementsByPlace(elementTree(old))) {
    const found = countsIn(old, elements, read);
    if (found.length > 0) counts.set(place, found);
  }
  if (counts.size === 0) return [];
  const edits: TextEdit[] = [];
  for (const [place, elements] of elementsByPlace(elementTree(text)))
    for (const { attribute, child } of counts.get(place) ?? [])
      for (const element of elements) {
        const there = attributeOf(element, attribute);
        const number = String(countOf(element, child));
        if (there && plainText(text, there.valueStart, there.valueEnd, true) !== number)
          edits.push(replacing(mainSpan(there.valueStart, there.valueEnd), number));
      }
  return edits;
}

/** Where values start that say how many elements stand in theirs. */
export function countPlaces(vocabulary: Vocabulary, text: string): ReadonlySet<number> {
  const read = parametersOf(vocabulary);
  const places = new Set<number>();
  for (const elements of elementsByPlace(elementTree(text)).values())
    for (const { attribute } of countsIn(text, elements, read))
      for (const element of elements) {
        const there = attributeOf(element, attribute);
        if (there) places.add(there.valueStart);
      }
  return places;
}

/** The elements of a tree by the names of those that they stand in and their own. */
function elementsByPlace(root: StyledElement): Map<string, StyledElement[]> {
  const byPlace = new Map<string, StyledElement[]>();
  const waiting: [element: StyledElement, place: string][] = root.children.map((child) => [
    child,
    child.name,
  ]);
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const [element, place] = next;
    const known = byPlace.get(place);
    if (known) known.push(element);
    else byPlace.set(place, [element]);
    for (const child of element.children) waiting.push([child, `${place}/${child.name}`]);
  }
  return byPlace;
}

function countsIn(text: string, elements: readonly StyledElement[], read: ReadonlySet<string>): ChildCount[] {
  const children = new Set(elements.flatMap((one) => one.children.map(({ name }) => name)));
  if (children.size === 0) return [];
  return (elements[0]?.attributes ?? []).flatMap(({ name: attribute }): ChildCount[] => {
    if (read.has(`${elements[0]?.name} @${attribute}`)) return [];
    const values = elements.map((one) => numberAt(text, attributeOf(one, attribute)));
    // The number of one element in one that stands alone could be its own number.
    const isTelling = namesCount(attribute) || values.some((value) => value > 1);
    const agrees = (child: string | undefined) =>
      isTelling &&
      speaksOfCount(attribute, child, [...children]) &&
      elements.every((one, at) => countOf(one, child) === values[at]);
    const found = [...children, undefined].find(agrees);
    return found !== undefined || agrees(undefined) ? [{ attribute, child: found }] : [];
  });
}

function numberAt(text: string, attribute: AttributeText | undefined): number {
  const value = attribute ? plainText(text, attribute.valueStart, attribute.valueEnd, true) : '';
  return /^\d{1,6}$/.test(value) ? Number(value) : Number.NaN;
}

function countOf({ children }: StyledElement, child: string | undefined): number {
  return child === undefined ? children.length : children.filter(({ name }) => name === child).length;
}

function namesCount(attribute: string): boolean {
  return nameWords(attribute).some(
    (word) => countWords.has(word) || conceptsOf(word)?.concepts.includes('count') === true,
  );
}

/** Whether the name of an attribute speaks of a number of things, or is the plural of what it counts. */
function speaksOfCount(attribute: string, child: string | undefined, children: readonly string[]): boolean {
  const words = nameWords(attribute);
  const concepts = words.flatMap((word) => conceptsOf(word)?.concepts ?? []);
  if (namesCount(attribute) || concepts.some((one) => one === 'num' || one === 'number')) return true;
  const named = (child === undefined ? children : [child]).map((name) => nameWords(name).join(' '));
  return named.some((name) => words.join(' ') === `${name}s` || words.join(' ') === name);
}
