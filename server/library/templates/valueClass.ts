import { resolveOpcode } from '../../model/opcodes/resolve';

/**
 * What a value is about: one recording and where it lies, when the region sounds, what its group is called, or how it is to
 * sound, which is what a template is for.
 */
export type ValueClass = 'recording' | 'condition' | 'label' | 'style';

/** Values that name a recording and place it; a group that gives an example one does so for that example. */
const ofRecording: ReadonlySet<string> = new Set([
  'sample',
  'pitch_keycenter',
  'offset',
  'end',
  'loop_start',
  'loop_end',
  'loop_count',
]);

/** Values that belong to one recording where a region sets them, and to the sound where a group does. */
const ofOneRegion: ReadonlySet<string> = new Set([
  'tune',
  'transpose',
  'volume',
  'amplitude',
  'gain',
  'pan',
  'delay',
  'position',
  'direction',
]);

/** What a value of a canonical name is about, where a region or a header around it sets it. */
export function valueClass(name: string, isOfRegion: boolean): ValueClass {
  if (ofRecording.has(name) || (isOfRegion && ofOneRegion.has(name))) return 'recording';
  if (name.endsWith('_label')) return 'label';
  return resolveOpcode(name)?.facts.category.startsWith('Region Logic/') ? 'condition' : 'style';
}

/** Conditions of one family say something together, so that one of them makes no sense without the others. */
export function familyOf(name: string): string {
  if (name.startsWith('sw_')) return 'sw';
  if (/^(?:lo|hi)rand$|^seq_/.test(name)) return 'turns';
  return name.replace(/^(on_)?(?:lo|hi)/, '$1');
}

/** What a condition is where nothing sets it; `undefined` for one that has no such value. */
export function usualCondition(name: string): string | undefined {
  const text = resolveOpcode(name)?.facts.defaultText;
  return text !== undefined && /^-?\d+(?:\.\d+)?$|^[a-z]+$/.test(text) ? text : undefined;
}

/** Levels, tunings and places in the panorama, those that groups add to their regions among them; 0 where nothing is said. */
const soundOfRecording = /^(?:(?:group|master|global)_)?(?:volume|tune)$|^(?:pan|transpose)$/;

/** Whether a value is the level, the tuning or the place in the panorama of recordings. */
export function isSoundOfRecording(name: string): boolean {
  return soundOfRecording.test(name);
}

/** What a condition, a level, a tuning or an offset is where nothing sets it; `undefined` for other values. */
export function usualPlace(name: string): string | undefined {
  if (name === 'offset' || isSoundOfRecording(name)) return '0';
  return valueClass(name, true) === 'condition' ? usualCondition(name) : undefined;
}

/** The values of a region that a place for one says: a key is both ends of its range and the root key. */
export function valuesOfPlace(name: string): string[] {
  return name === 'key' ? ['lokey', 'hikey', 'pitch_keycenter'] : [name];
}
