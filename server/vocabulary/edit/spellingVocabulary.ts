import type { HeaderName } from '../../model/headerKinds';
import { HeaderKind, headerKindOf, headerNames } from '../../model/headerKinds';
import type { Spelling } from '../../model/notation';
import { quoteBefore } from '../../xml/scan/quotes';
import { restOfTag } from '../../xml/scan/restOfTag';
import { tagAt } from '../../xml/scan/tagAt';
import { writeValue } from '../forms/valueForms';
import type { PlacePath } from '../places';
import type { Vocabulary } from '../vocabulary';
import { filledElement } from '../write/writeElements';
import type { LevelPlaces, WritingPlace } from '../write/writePlaces';
import { canonicalNameOf, placesOf } from '../write/writePlaces';
import { elementText, encodedElementText, encodedFor } from './styleElement';

/** A place in a text at which something is to be written. */
export interface TextPlace {
  text: string;
  start: number;
}

/** How instrument XML in a vocabulary spells what a person starts to type. */
export function spellingIn(vocabulary: Vocabulary): Spelling {
  return {
    parameter: (name, at) => spelledParameter(vocabulary, name, at),
    value(text, at) {
      const quote = at === undefined ? '"' : quoteBefore(at.text, at.start);
      return quote === '' ? encodedElementText(text) : encodedFor(quote, text);
    },
    inForm: (name, value, typed) => spelledValue(vocabulary, name, value, typed),
    header(name, rest) {
      const level = levelOfKind(vocabulary, headerKindOf(name));
      const places = placesOf(vocabulary)[level];
      const element = places?.level.element ?? name;
      const hasAttributes = places?.all.some(
        ({ path }) => path.steps.length === 0 && path.attribute !== undefined,
      );
      const isRegion = level === vocabulary.levels.length - 1;
      const behind = restOfTag(rest, element);
      if (behind.kind === 'more') return [element, ''];
      const taken = behind.kind === 'bracket' ? behind.length : 0;
      if (!hasAttributes) return [`${element}>`, `</${element}>`, taken];
      return [`${element} `, isRegion ? '/>' : `></${element}>`, taken];
    },
  };
}

/** The headers that a vocabulary has elements for. */
export function headersIn(vocabulary: Vocabulary): readonly HeaderName[] {
  return headerNames.filter((name) => levelOfKind(vocabulary, headerKindOf(name)) >= 0);
}

/** The level that a kind of header is written as, or −1. */
function levelOfKind({ levels }: Vocabulary, kind: HeaderKind): number {
  const groups = levels.flatMap(({ is }, at) => (is === 'group' ? [at] : []));
  switch (kind) {
    case HeaderKind.region:
      return levels.length - 1;
    case HeaderKind.group:
      return groups.at(-1) ?? -1;
    case HeaderKind.master:
      return groups.at(-2) ?? -1;
    case HeaderKind.global:
      return levels[0]?.is === 'instrument' ? 0 : -1;
    default:
      return -1;
  }
}

/**
 * The canonical names of the parameters that a header of a kind has a place for; of any header where the kind is not known.
 * With `at`, those that can be written there, each place once.
 */
export function parametersIn(
  vocabulary: Vocabulary,
  kind: HeaderKind,
  at: TextPlace | undefined,
): readonly string[] {
  const levels = levelsOf(vocabulary, kind);
  const names = new Set<string>();
  const places = new Set<string>();
  for (const { all } of levels) {
    for (const { parameter, path } of all) {
      if (at && (!fitsAt(levels, path, at) || places.has(parameter.at))) continue;
      places.add(parameter.at);
      names.add(canonicalNameOf(parameter.parameter));
    }
  }
  return [...names];
}

function levelsOf(vocabulary: Vocabulary, kind: HeaderKind): readonly LevelPlaces[] {
  const all = placesOf(vocabulary);
  if (kind === HeaderKind.unknown) return all;
  const level = all[levelOfKind(vocabulary, kind)];
  return level ? [level] : [];
}

/**
 * Whether a value can be written at a place: an attribute in the tag that takes it, a child element between tags or where
 * a tag is begun, the word that tells elements of one name apart in the attribute for it.
 */
function fitsAt(levels: readonly LevelPlaces[], { steps, attribute }: PlacePath, at: TextPlace): boolean {
  const tag = tagAt(at.text, at.start);
  const last = steps[steps.length - 1];
  if (!tag || tag.part.kind === 'element') return last !== undefined;
  if (tag.part.kind === 'value') {
    const naming = tag.part.attribute;
    return last?.element === tag.name && last.selectors.some(([name]) => name === naming);
  }
  if (attribute === undefined) return false;
  if (!last) return levels.some(({ level }) => level.element === tag.name);
  return last.element === tag.name && last.selectors.length === 0;
}

function placeFor(vocabulary: Vocabulary, name: string, at: TextPlace | undefined): WritingPlace | undefined {
  const levels = [...placesOf(vocabulary)].reverse();
  const places = levels.flatMap(({ byName }) => byName.get(canonicalNameOf(name)) ?? []);
  return (at && places.find(({ path }) => fitsAt(levels, path, at))) ?? places[0];
}

const mark = '\ue000';

function spelledParameter(
  vocabulary: Vocabulary,
  name: string,
  at: TextPlace | undefined,
): [before: string, after: string] {
  const place = placeFor(vocabulary, name, at);
  if (!place) return [`${name}="`, '"'];
  const { steps, attribute } = place.path;
  const part = at && tagAt(at.text, at.start)?.part;
  if (part?.kind === 'value') {
    const selectors = steps[steps.length - 1]?.selectors ?? [];
    const word = selectors.find(([selector]) => selector === part.attribute)?.[1] ?? name;
    return [encodedFor(quoteBefore(at?.text ?? '', part.start), word), ''];
  }
  const isInTag = part !== undefined && part.kind !== 'element';
  if (attribute !== undefined && (steps.length === 0 || isInTag)) return [`${attribute}="`, '"'];
  const [step] = steps;
  if (!step) return ['', ''];
  // Of a tag that is there already the name alone is written.
  if (part?.kind === 'element' && /^[\s/>]*[^\s<]/.test(at?.text.slice(part.end, part.end + 100) ?? '')) {
    return [step.element, ''];
  }
  const style = { example: undefined, text: '', indentation: '', unit: '', lineEnd: '' };
  const [child] = filledElement('', [{ place, text: mark }]).children;
  const [before = '', after = ''] = child ? elementText(child, style).split(mark) : [];
  return [part?.kind === 'element' ? before.slice(1) : before, after];
}

/** A value in the form of its first place, keys by name where a letter was typed. */
function spelledValue(
  vocabulary: Vocabulary,
  name: string,
  value: string,
  typed: string,
): string | undefined {
  const form = placeFor(vocabulary, name, undefined)?.parameter.form;
  if (!form) return undefined;
  const named = form.kind === 'key' && /^[a-z]/i.test(typed) ? { ...form, written: 'name' as const } : form;
  const around = { parameter: name, sampleRate: undefined, frames: undefined, frameOf: () => 0 };
  return writeValue(named, value, around)?.text;
}
