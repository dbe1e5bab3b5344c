import { isAudioFileName } from '../../../model/fileNames';
import { isNoteName } from '../values/columnFacts';
import { meaningsOf } from '../words/meanings';
import { nameWords } from '../words/nameWords';
import type { ElementType, Site, Survey } from './survey';

/** Elements that name a value instead of being named after it: the attribute that holds the name. */
export type Selectors = ReadonlyMap<ElementType, string>;

const mostNames = 64;
/** Values beside the name of such an element. */
const mostValues = 4;
/** So many where the name need not stand in an attribute that is named so. */
const mostUnnamed = 2;
const namePattern = /^[\p{L}_][\p{L}\p{N}_.:\- ]*(?:\((?:[\p{L}\p{N}_.:\- ]{1,20}|%)\))?$/u;
const namingAttribute =
  /^(?:.*[^a-z])?(?:n|nm|name|key|id|k|type|what|param|parameter|property|prop|field|is|which|for|kind)$/i;

/**
 * Finds elements such as `<set what="low" to="36"/>`: each stands at most once with each name in the element around it,
 * and most of the names say something of the trade.
 */
export function findSelectors({ types }: Survey): Selectors {
  const selectors = new Map<ElementType, string>();
  for (const type of types) {
    const name = selectorOf(type);
    if (name !== undefined && !isReferredTo(type, name, types)) selectors.set(type, name);
  }
  return selectors;
}

/** Whether attributes that are named after an element hold what could be its names: it is an entry of a list, and they refer to it. */
function isReferredTo(type: ElementType, attribute: string, types: readonly ElementType[]): boolean {
  const names = type.attributes.get(attribute)?.tally;
  const own = nameWords(type.name).join(' ');
  if (!names || names.size < 2) return false;
  // An entry may be missing.
  const doRefer = (tally: ReadonlyMap<string, number>) =>
    [...tally.keys()].filter((one) => names.has(one)).length * 2 > tally.size;
  const refers = ([name, { tally }]: [string, Site]) =>
    tally !== undefined && nameWords(name).join(' ') === own && doRefer(tally);
  return types.some((other) => other !== type && [...other.attributes].some(refers));
}

function selectorOf(type: ElementType): string | undefined {
  const { parent, attributes, children, text } = type;
  if (!parent || children.size > 0) return undefined;
  const values = attributes.size - 1 + (text ? 1 : 0);
  if (values < 1 || values > mostValues) return undefined;
  for (const [attribute, site] of attributes) {
    const { tally } = site;
    if (!tally || tally.size > mostNames || site.count !== type.count) continue;
    const names = [...tally.keys()];
    if (names.some((name) => !namePattern.test(name) || isAudioFileName(name))) continue;
    if ([...tally.values()].some((count) => count > parent.count)) continue;
    if (names.some(isNoteName) || holdsFiles(type, attribute)) continue;
    const isNaming = namingAttribute.test(attribute) && !names.every((name) => name.length === 1);
    if (values > mostUnnamed && (!isNaming || type.mostInParent < 2)) continue;
    const targets = names.map((name) => meaningsOf(nameWords(name), [], [])[0]?.target);
    const known = targets.filter((target) => target !== undefined);
    const fits =
      names.length === 1
        ? namingAttribute.test(attribute) && known.length === 1
        : known.length * 2 >= names.length && new Set(known).size > 1;
    if (fits && (names.length === 1 || type.mostInParent > 1)) return attribute;
  }
  return undefined;
}

/** Whether most elements of a type name a file beside an attribute: then they are no values of something else. */
function holdsFiles(type: ElementType, attribute: string): boolean {
  const texts = type.text?.values ?? [];
  // Several files beside each other are takes or microphones, one is a value of its element.
  const areSeveral = type.mostInParent > 1 && texts.filter(({ text }) => isAudioFileName(text)).length > 1;
  if (areSeveral && texts.filter(({ text }) => isAudioFileName(text)).length * 2 >= texts.length) return true;
  for (const [name, { values }] of type.attributes) {
    if (name === attribute || values.length < 2) continue;
    if (values.filter(({ text }) => isAudioFileName(text)).length * 2 >= values.length) return true;
  }
  return false;
}
