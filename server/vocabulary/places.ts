import { isXmlName } from '../xml/scan/characters';
import type { VocabularyParameter } from './vocabulary';

/** A child element on the way to a value, with the attributes that tell it from others of its name. */
export interface PlaceStep {
  element: string;
  selectors: readonly (readonly [attribute: string, value: string])[];
}

/** Where a value stands, seen from the element of its level: in an attribute, else in the text, of the last step. */
export interface PlacePath {
  steps: readonly PlaceStep[];
  attribute: string | undefined;
}

const step = /^([^/[\]@]+)((?:\[@[^=\]]+=(?:"[^"]*"|'[^']*')\])*)(?:\/(?=.)|$)/s;
const selector = /\[@([^=\]]+)=(?:"([^"]*)"|'([^']*)')\]/g;

/** Elements on the way to a value at the most; no document needs more (our choice), and ways without end would be followed so far. */
const mostSteps = 48;

/** The places that name folders around a path, from the outermost inwards: `@folder | @sub`. */
export function folderPlaces(under: string): string[] {
  return under.split(/\s*\|\s*/).filter((place) => place !== '');
}

/** Takes an `at` of a vocabulary apart; `undefined` for one that cannot be understood. */
export function parsePlace(at: string): PlacePath | undefined {
  const steps: PlaceStep[] = [];
  let rest = at.trim();
  if (rest === '.') return { steps, attribute: undefined };
  if (rest.startsWith('./')) rest = rest.slice(2);
  while (rest !== '') {
    if (rest.startsWith('@'))
      return isXmlName(rest.slice(1)) ? { steps, attribute: rest.slice(1) } : undefined;
    const found = step.exec(rest);
    if (!found || steps.length === mostSteps) return undefined;
    const [whole, element = '', selection = ''] = found;
    const selectors = [...selection.matchAll(selector)].map(
      ([, name = '', double, single]) => [name, double ?? single ?? ''] as const,
    );
    if (!isXmlName(element) || !selectors.every(([name]) => isXmlName(name))) return undefined;
    steps.push({ element, selectors });
    rest = rest.slice(whole.length);
  }
  return steps.length > 0 ? { steps, attribute: undefined } : undefined;
}

/**
 * Whether a parameter is read only where its element says nothing else of it, and never written: a value of a list, velocities that a
 * word stands for beside a place of their numbers, or a root key in a place of key ranges, where a single key is the root key too.
 */
export function isStandIn(one: VocabularyParameter, parameters: readonly VocabularyParameter[]): boolean {
  if (one.listed) return true;
  const isNumbers = ({ parameter, form }: VocabularyParameter) =>
    parameter === one.parameter && form.kind === 'velocity';
  if (one.form.kind === 'words' && !one.form.over && /^(?:lo|hi)vel$/.test(one.parameter))
    return parameters.some(isNumbers);
  const isRange = (other: VocabularyParameter) => other.at === one.at && other.part !== undefined;
  return one.parameter === 'pitch_keycenter' && one.part === undefined && parameters.some(isRange);
}
