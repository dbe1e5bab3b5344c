import { sharedParameterNames } from '../../model/parameterNames';
import type { PlacePath } from '../places';
import { parsePlace } from '../places';
import type { Vocabulary, VocabularyLevel, VocabularyParameter } from '../vocabulary';

/** A parameter of a level with its place taken apart. */
export interface WritingPlace {
  parameter: VocabularyParameter;
  /** The canonical name of the parameter. */
  name: string;
  path: PlacePath;
  /** The number of the text that stands there, from 0 within its level: parameters that share one place share the text. */
  slot: number;
  /** What parts the range that the place holds half of; `-` where nothing is said. */
  between: string;
}

/** The places of one level by canonical parameter name, and all of them in the order of the vocabulary. */
export interface LevelPlaces {
  level: VocabularyLevel;
  /** As in {@link Vocabulary.loops}. */
  loops: Vocabulary['loops'];
  all: readonly WritingPlace[];
  byName: ReadonlyMap<string, readonly WritingPlace[]>;
  /** One more than the greatest {@link WritingPlace.slot}. */
  slots: number;
  /** By place that holds half of a range text, the place of the other half. */
  halves: ReadonlyMap<WritingPlace, WritingPlace>;
  /** By place, those of other parameters that the very same text gives a value, such as the group and `off_by` of a choke number. */
  sharing: ReadonlyMap<WritingPlace, readonly WritingPlace[]>;
}

const compiled = new WeakMap<Vocabulary, readonly LevelPlaces[]>();

/** The places of each level of a vocabulary, worked out once. Those that cannot be understood are left out. */
export function placesOf(vocabulary: Vocabulary): readonly LevelPlaces[] {
  let levels = compiled.get(vocabulary);
  if (!levels) {
    levels = vocabulary.levels.map((level) => levelPlaces(level, vocabulary.loops));
    compiled.set(vocabulary, levels);
  }
  return levels;
}

function levelPlaces(level: VocabularyLevel, loops: Vocabulary['loops']): LevelPlaces {
  const all: WritingPlace[] = [];
  const byName = new Map<string, WritingPlace[]>();
  const slots = new Map<string, number>();
  for (const parameter of level.parameters) {
    const path = parsePlace(parameter.at);
    if (!path) continue;
    const key = JSON.stringify([path.steps, path.attribute]);
    const slot = slots.get(key) ?? slots.size;
    slots.set(key, slot);
    const name = canonicalNameOf(parameter.parameter);
    const place = { parameter, name, path, slot, between: parameter.between ?? '-' };
    all.push(place);
    const list = byName.get(name);
    if (list) list.push(place);
    else byName.set(name, [place]);
  }
  const halves = new Map<WritingPlace, WritingPlace>();
  const sharing = new Map<WritingPlace, readonly WritingPlace[]>();
  for (const place of all) {
    const { part, between } = place.parameter;
    const beside = all.filter(({ slot, name }) => slot === place.slot && name !== place.name);
    const others = beside.filter((one) => one.parameter.part === part);
    if (others.length > 0) sharing.set(place, others);
    if (part === undefined) continue;
    const other = beside.find((one) => one.parameter.part === 3 - part);
    if (!other) continue;
    halves.set(place, other);
    place.between = between ?? other.parameter.between ?? '-';
  }
  return { level, loops, all, byName, slots: slots.size, halves, sharing };
}

/** The canonical name of a parameter of the open SFZ format; an unknown name stays as it is. */
export function canonicalNameOf(name: string): string {
  const names = sharedParameterNames();
  return names.text(names.canonical(names.idOf(name)));
}

/** The other half of a range text, where a place holds half of one. */
export function otherHalf({ halves }: LevelPlaces, place: WritingPlace): WritingPlace | undefined {
  return halves.get(place);
}
