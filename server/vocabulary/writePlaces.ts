import { sharedParameterNames } from '../model/parameterNames';
import type { Vocabulary, VocabularyLevel, VocabularyParameter } from './vocabulary';

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

/** A parameter of a level with its place taken apart. */
export interface WritingPlace {
  parameter: VocabularyParameter;
  path: PlacePath;
}

/** The places of one level by canonical parameter name, and all of them in the order of the vocabulary. */
export interface LevelPlaces {
  level: VocabularyLevel;
  all: readonly WritingPlace[];
  byName: ReadonlyMap<string, readonly WritingPlace[]>;
}

/** The part of a place behind the last element, or an element with its selectors. */
const step = /^([^/[\]@]+)((?:\[@[^=\]]+=(?:"[^"]*"|'[^']*')\])*)(?:\/|$)/;
const selector = /\[@([^=\]]+)=(?:"([^"]*)"|'([^']*)')\]/g;

/** Takes an `at` of a vocabulary apart; `undefined` for one that cannot be understood. */
export function parsePlace(at: string): PlacePath | undefined {
  const steps: PlaceStep[] = [];
  let rest = at.trim();
  if (rest === '.') return { steps, attribute: undefined };
  if (rest.startsWith('./')) rest = rest.slice(2);
  while (rest !== '') {
    const attribute = /^@([^/[\]@=]+)$/.exec(rest)?.[1];
    if (attribute !== undefined) return { steps, attribute: attribute.trim() };
    const found = step.exec(rest);
    if (!found) return undefined;
    const selectors = [...(found[2] ?? '').matchAll(selector)].map(
      ([, name = '', double, single]) => [name.trim(), double ?? single ?? ''] as const,
    );
    steps.push({ element: (found[1] as string).trim(), selectors });
    rest = rest.slice(found[0].length);
  }
  return steps.length > 0 ? { steps, attribute: undefined } : undefined;
}

const compiled = new WeakMap<Vocabulary, readonly LevelPlaces[]>();

/** The places of each level of a vocabulary, worked out once. Those that cannot be understood are left out. */
export function placesOf(vocabulary: Vocabulary): readonly LevelPlaces[] {
  let levels = compiled.get(vocabulary);
  if (!levels) {
    levels = vocabulary.levels.map(levelPlaces);
    compiled.set(vocabulary, levels);
  }
  return levels;
}

function levelPlaces(level: VocabularyLevel): LevelPlaces {
  const all: WritingPlace[] = [];
  const byName = new Map<string, WritingPlace[]>();
  for (const parameter of level.parameters) {
    const path = parsePlace(parameter.at);
    if (!path) continue;
    const place = { parameter, path };
    all.push(place);
    const name = canonicalNameOf(parameter.parameter);
    const list = byName.get(name);
    if (list) list.push(place);
    else byName.set(name, [place]);
  }
  return { level, all, byName };
}

/** The canonical name of a parameter of the open SFZ format; an unknown name stays as it is. */
export function canonicalNameOf(name: string): string {
  const names = sharedParameterNames();
  return names.text(names.canonical(names.idOf(name)));
}

/** The other half of a range text, where a place holds half of one. */
export function otherHalf(level: LevelPlaces, { parameter }: WritingPlace): WritingPlace | undefined {
  if (parameter.part === undefined) return undefined;
  return level.all.find(
    (one) =>
      one.parameter.at === parameter.at &&
      one.parameter.part !== undefined &&
      one.parameter.part !== parameter.part,
  );
}
