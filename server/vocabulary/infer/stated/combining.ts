import type { ElementType, Survey } from '../elements/survey';
import type { InferredTarget } from '../words/meaningRules';
import { meaningsOf } from '../words/meanings';
import { nameWords } from '../words/nameWords';
import { conceptsOf } from '../words/tradeWords';
import type { OuterValues } from './nesting';
import { combiningWord } from './nesting';

/** What is said to be added to values further in, or replaced by them. */
export type Combined = 'volume' | 'tune' | 'pan';

const kinds: Readonly<Record<string, Combined>> = {
  volume: 'volume',
  attenuation: 'volume',
  tune: 'tune',
  transpose: 'tune',
  pan: 'pan',
};
/** The kind of values that a target is of. */
export function combinedKind(target: InferredTarget): Combined | undefined {
  return kinds[target];
}

const mostRules = 40;

/**
 * How a document says, value by value, that what outer elements give goes with what regions have: a rule that names the value and
 * says how, as `<rule value="tune" combine="add"/>`; an element or an attribute that is named after it, as `<gain nesting="sum"/>`
 * and `<combine gain="add" pan="replace"/>`.
 */
export function combiningIn(
  { types }: Survey,
  isRegion: (type: ElementType) => boolean,
): ReadonlyMap<Combined, OuterValues> {
  const found = new Map<Combined, OuterValues>();
  for (const type of types) {
    if (type.count > mostRules || isRegion(type)) continue;
    for (const { about, is, text } of rulesOf(type)) {
      const kind = kindOf(about);
      if (kind && !found.has(kind)) found.set(kind, { is, text });
    }
  }
  return found;
}

interface Rule extends OuterValues {
  /** Names that may say what it is about, the likeliest first. */
  about: readonly string[];
}

/** The rules in the elements of one type. */
function rulesOf({ name, count, attributes, text }: ElementType): Rule[] {
  const sites = [...attributes, ...(text ? [['', text] as const] : [])];
  return sites.flatMap(([place, site]) => {
    if (site.count !== count) return [];
    return site.values.flatMap((value, at) => {
      const is = combiningWord(value.text);
      if (is === undefined) return [];
      const others = sites
        .filter(([other, { count: times }]) => other !== place && times === count)
        .map(([, { values }]) => values[at]?.text ?? '');
      const shown = place === '' ? [`<${name}>${value.text}`] : [`${place}="${value.text}"`];
      return [{ is, about: [...others, place, name], text: [...others, ...shown].join(' ') }];
    });
  });
}

/** The value that a name speaks of. */
function kindOf(names: readonly string[]): Combined | undefined {
  for (const name of names) {
    if (/\s/.test(name.trim())) continue;
    const words = nameWords(name.trim()).filter((word) => conceptsOf(word)?.concepts.join() !== 'mode');
    for (const { target, weight } of meaningsOf(words, [], []))
      if (kinds[target] && weight >= surely) return kinds[target];
  }
  return undefined;
}

const surely = 0.6;
