import { saysOf } from '../../../trade/phrases/toldWords';
import type { VocabularyLevel } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, wordedPlace } from '../draft';
import { saysSo } from '../saysSo';
import { nameWords } from '../words/nameWords';
import type { XmlStatements } from './statements';

/**
 * Keys without ranges where the text says that each serves up to the next one, or down to the one before: the key is the root and one
 * end of the range, and the other end follows from the next key. Where the text says it otherwise it is told that it is not done.
 */
export function withSpreadKeys(
  assigned: readonly Assigned[],
  { keySpread }: Pick<XmlStatements, 'keySpread'>,
  chain: readonly string[],
): { assigned: Assigned[]; drafts: Draft[] } {
  const unchanged = { assigned: [...assigned], drafts: [] };
  const has = (...targets: string[]) => assigned.find(({ target }) => targets.includes(target));
  if (!keySpread || has('lokey', 'hikey')) return unchanged;
  const one = has('key') ?? has('pitch_keycenter');
  if (!one || one.facts.tally.size < 2) return unchanged;
  const isLone = (has('lovel') === undefined) !== (has('hivel') === undefined);
  const layer = isLone ? (has('lovel') ?? has('hivel')) : undefined;
  if (layer && isOfLayers(keySpread.text, layer, chain)) return unchanged;
  const isRooted = has('pitch_keycenter') !== undefined && one.target === 'key';
  const root: Assigned = { ...one, target: 'pitch_keycenter' };
  // What is shared out half way needs no more than the roots.
  if (keySpread.is === 'nearest') {
    if (isRooted) return { ...unchanged, drafts: [notShared(one, keySpread.text)] };
    return { assigned: assigned.map((other) => (other === one ? root : other)), drafts: [] };
  }
  const evidence = saysSo(keySpread.text);
  if (keySpread.is === 'around') {
    const { notes, whole, filled, least, greatest } = one.facts;
    const isWithin = least - keySpread.down >= 0 && greatest + keySpread.up <= 127;
    // Names of notes are not counted on.
    if (notes > 0 || whole < filled || !isWithin)
      return { ...unchanged, drafts: [notShared(one, keySpread.text)] };
    const low: Assigned = { ...one, target: 'lokey', base: -keySpread.down, evidence };
    const high: Assigned = { ...one, target: 'hikey', base: keySpread.up, evidence };
    const all = isRooted ? [low, high] : [low, high, root];
    return { assigned: assigned.flatMap((other) => (other === one ? all : [other])), drafts: [] };
  }
  const end: Assigned = { ...one, target: keySpread.is === 'upward' ? 'lokey' : 'hikey', evidence };
  const put = isRooted ? [end] : [end, root];
  return { assigned: assigned.flatMap((other) => (other === one ? put : [other])), drafts: [] };
}

/** Whether a sentence is about layers of which one end is given, and not about keys: it names that place or its element. */
function isOfLayers(text: string, { column }: Assigned, chain: readonly string[]): boolean {
  const said = new Set((text.match(/[\p{L}\p{N}]+/gu) ?? []).flatMap(nameWords));
  const names = [column.own, nameWords(chain[column.level] ?? '')];
  return (
    !saysOf(text, 'keys') || names.some((name) => name.length > 0 && name.every((word) => said.has(word)))
  );
}

/** The outermost element with the key that the first or last zone reaches to, where the text says so. */
export function withOutermostKeys(
  [first, ...levels]: readonly VocabularyLevel[],
  steps: readonly string[],
  { lowestKey, outermostKeys }: Pick<XmlStatements, 'lowestKey' | 'outermostKeys'>,
  assigned: readonly Assigned[],
  isRooted: boolean,
): VocabularyLevel[] {
  if (!first) return [];
  const sets: Record<string, string> = {};
  for (const [name, given, said] of [
    ['lokey', 'hikey', lowestKey],
    ['hikey', 'lokey', outermostKeys.highest],
  ] as const) {
    const key =
      said?.number ??
      (said?.named ?? Number.NaN) + namedShift([first, ...levels], isRooted ? 'pitch_keycenter' : given);
    // A last zone may lack the end that the others have.
    const isOpen = assigned.some(({ target, texts }) => target === name && texts.includes(undefined));
    if (Number.isNaN(key) || !(isRooted || steps.includes(name) || (isOpen && steps.includes(given))))
      continue;
    const isWithin = assigned.some(
      ({ target, facts }) =>
        (target === given || target === name || (isRooted && target === 'pitch_keycenter')) &&
        facts.notes === 0 &&
        (name === 'lokey' ? key > facts.least : key < facts.greatest),
    );
    if (!isWithin) sets[name] = String(key);
  }
  const isSet = Object.keys(sets).length > 0 && first.is === 'instrument';
  return [isSet ? { ...first, sets: { ...first.sets, ...sets } } : first, ...levels];
}

/** How far a note name lies from where it is with middle C = C4, by how the other ends are written. */
function namedShift(levels: readonly VocabularyLevel[], parameter: string): number {
  const forms = levels.flatMap(({ parameters }) =>
    parameters.filter((one) => one.parameter === parameter).map(({ form }) => form),
  );
  const middleC = forms.flatMap((form) => (form.kind === 'key' && form.middleC ? [form.middleC] : []))[0];
  return middleC === 'C3' ? 12 : middleC === 'C5' ? -12 : 0;
}

function notShared(one: Assigned, text: string): Draft {
  return {
    id: 'keys.shared',
    message: `Each region sounds on the key in ${wordedPlace(one)} alone or on all keys. The keys between are not shared out.`,
    confidence: 0.4,
    isLost: true,
    evidence: [saysSo(text)],
    span: firstValueOf(one),
    isAbout: () => false,
    alternatives: [],
  };
}
