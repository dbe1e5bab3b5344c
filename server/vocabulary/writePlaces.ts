import { sharedParameterNames } from '../model/parameterNames';
import type { PlacePath } from './places';
import { parsePlace } from './places';
import type { Vocabulary, VocabularyLevel, VocabularyParameter } from './vocabulary';

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
