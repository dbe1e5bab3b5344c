import type { Recording } from './recording';
import type { Root } from './roots';

/** A recording with its place in the instrument. */
export interface Placed {
  recording: Recording;
  root: number;
  tuneCents: number;
  /** The group that it belongs to: its articulation, microphone and whether it sounds on release. */
  section: string;
  isRelease: boolean;
  /** What its velocities are shared with: the section, in a kit the sound. */
  family: string;
  /** −100 to 100, where two files are the sides of one sound. */
  pan: number | undefined;
  /** The name of its layer, or the number of its velocity. */
  layer: string | undefined;
  /** Where it stands among those of its key and layer. */
  turn: number;
  lowKey: number;
  highKey: number;
  lowVelocity: number;
  highVelocity: number;
  position: number;
  length: number;
  /** Why it stands where it does, as sentences. */
  because: string[];
}

/** Items by what they have in common, in their order. */
export function grouped<Item>(items: Iterable<Item>, keyOf: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const key = keyOf(item);
    const list = groups.get(key);
    if (list) list.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}

/** A recording at its root, with nothing else decided. */
export function placedAt(recording: Recording, { key, tuneCents }: Pick<Root, 'key' | 'tuneCents'>): Placed {
  return {
    recording,
    root: key,
    tuneCents,
    section: '',
    family: '',
    isRelease: false,
    pan: undefined,
    layer: undefined,
    turn: 0,
    lowKey: key,
    highKey: key,
    lowVelocity: 1,
    highVelocity: 127,
    position: 1,
    length: 1,
    because: [],
  };
}
