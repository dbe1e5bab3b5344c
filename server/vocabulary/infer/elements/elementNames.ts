import { dynamicIn } from '../../../trade/dynamics';
import { nameWords } from '../words/nameWords';
import { conceptsOf } from '../words/tradeWords';
import { isReleaseName } from '../words/words';
import type { RegionElement } from './regionElement';
import { isMicrophoneName } from './sidedFiles';
import type { ElementType } from './survey';

/**
 * The names of elements that are the names of groups: of those beside one another in the same element, with regions in each, as
 * `<close>` and `<room>`, and of the elements of a note that name the file of one microphone each.
 */
export function namesOfGroups({ types, microphones }: RegionElement): ReadonlySet<string> {
  if (microphones) return new Set([...types].map(({ name }) => name));
  let level = new Set<ElementType>(types);
  while (level.size > 1) {
    const outer = new Set([...level].map(({ parent }) => parent));
    const areHolders = [...level].every((type) => !types.has(type));
    if (outer.has(undefined)) break;
    if (areHolders && outer.size === 1) {
      const names = new Set([...level].map(({ name }) => name).filter(isGroupName));
      return names.size > 1 ? names : new Set();
    }
    level = new Set([...outer].filter((type) => type !== undefined));
  }
  return new Set();
}

/** Whether the name of an element says more than what kind of element it is. */
function isGroupName(name: string): boolean {
  const words = nameWords(name);
  if (isReleaseName(words)) return false;
  return isMicrophoneName(name) || words.some((word) => dynamicIn(word) >= 0 || !conceptsOf(word));
}
