import { isAudioFileName } from '../../../model/fileNames';
import { meaningsOf } from '../words/meanings';
import { nameWords } from '../words/nameWords';
import type { Selectors } from './selectors';
import type { ElementType, Site } from './survey';

export const keyRangeTargets: ReadonlySet<string> = new Set(['lokey', 'hikey', 'key_range']);
export const anyKeyTargets: ReadonlySet<string> = new Set([...keyRangeTargets, 'key', 'pitch_keycenter']);
export const zoneTargets: ReadonlySet<string> = new Set([
  ...keyRangeTargets,
  'key',
  'lovel',
  'hivel',
  'velocity_range',
]);

/** Whether an element names keys, or names other things of a region inside one that does. */
export function namesKeys(holder: ElementType): boolean {
  const own = tradeTargets(holder, new Map());
  if (own.some((one) => anyKeyTargets.has(one))) return true;
  if (!own.some((one) => one !== 'sample' && one !== 'label')) return false;
  for (let at = holder.parent; at; at = at.parent) {
    const level = nameWords(at.name);
    for (const name of at.attributes.keys()) {
      if (anyKeyTargets.has(meaningsOf(nameWords(name), [], level)[0]?.target ?? '')) return true;
    }
  }
  return false;
}

/** Whether an element names keys or velocities, so that it could be a region. */
export function namesZones(type: ElementType, selectors: Selectors): boolean {
  return tradeTargets(type, selectors).some((target) => anyKeyTargets.has(target) || zoneTargets.has(target));
}

/** Whether an element names ends of key or velocity ranges, so that it is a region and no entry of a list. */
export function namesRanges(type: ElementType, selectors: Selectors): boolean {
  return tradeTargets(type, selectors).some((target) => zoneTargets.has(target) && target !== 'key');
}

/** Whether a place names audio files, so that its name speaks of no key. */
function holdsFiles({ values }: Site): boolean {
  const filled = values.filter(({ text }) => text !== '');
  return filled.length > 0 && filled.every(({ text }) => isAudioFileName(text));
}

/** The targets that the names in an element say, children included that stand in it once. */
export function tradeTargets(type: ElementType, selectors: Selectors): string[] {
  const targets: string[] = [];
  const visit = (at: ElementType, around: string[][], depth: number): void => {
    if (targets.length > 200) return;
    const naming = selectors.get(at);
    if (naming !== undefined) {
      for (const name of at.attributes.get(naming)?.tally?.keys() ?? [])
        add(nameWords(name), around.slice(0, -1));
    } else for (const [name, site] of at.attributes) if (!holdsFiles(site)) add(nameWords(name), around);
    if (at.text && depth > 0) add(around.at(-1) ?? [], around.slice(0, -1));
    if (depth >= 3) return;
    for (const child of at.children.values()) {
      if (child.mostInParent === 1 || selectors.has(child))
        visit(child, [...around, nameWords(child.name)], depth + 1);
    }
  };
  const add = (own: readonly string[], around: readonly (readonly string[])[]): void => {
    const target = meaningsOf(own, around, nameWords(type.name))[0]?.target;
    if (target) targets.push(target);
  };
  visit(type, [], 0);
  return targets;
}
