import { isXmlName } from '../xml/scan/characters';
import { formFields } from './forms/formFields';
import { parsePlace } from './places';
import type { SampleListPlace, ValueForm } from './vocabulary';

/** Whether a list of samples has all that it needs, and nothing else. */
export function isListPlace(list: SampleListPlace): boolean {
  const { element, key, path, under, rate, inside, first, ...rest } = list;
  const isAttribute = (place: string | undefined) =>
    place?.startsWith('@') === true && isXmlName(place.slice(1));
  const isElement = typeof element === 'string' && isXmlName(element);
  return (
    isElement &&
    isEntryKey(key) &&
    isEntryPlace(path) &&
    (under === undefined || isAttribute(under.replace(/^[^/@]+\/(?=@)/, ''))) &&
    (rate === undefined || isAttribute(rate)) &&
    (inside === undefined || inside.split('/').every(isXmlName)) &&
    (first === undefined || /^\d{1,9}$/.test(first)) &&
    Object.keys(rest).length === 0
  );
}

/** Whether a text says what entries of a list are referred to by. */
export function isEntryKey(key: string): boolean {
  return key === '#0' || key === '#1' || (key !== '.' && isEntryPlace(key));
}

/** Whether a text is a place in an entry of a list. */
export function isEntryPlace(place: string): boolean {
  return (
    typeof place === 'string' &&
    parsePlace(place)?.steps.every(({ selectors }) => selectors.length === 0) === true
  );
}

/** Whether there are three different letters or words for sides. */
export function areSides(sides: Readonly<Record<string, string>>): boolean {
  const { left, centre, right, ...rest } = sides;
  const letters = [left, centre, right].map((one) => one?.toLowerCase());
  return letters.every(Boolean) && new Set(letters).size === 3 && Object.keys(rest).length === 0;
}

/** Whether there is a form of a kind. */
export function isFormKind(kind: string): kind is ValueForm['kind'] {
  return Object.hasOwn(formFields, kind);
}
