import type { Recording } from './recording';
import type { Root } from './root';

/** A recording with its place in the instrument. */
export interface Placed {
  recording: Recording;
  root: number;
  tuneCents: number;
  /** The group that it belongs to: its articulation, microphone and whether it sounds on release. */
  section: string;
  isRelease: boolean;
  /** What its path says of how it was played, and of the microphone. */
  articulation: string;
  microphone: string;
  /** What its velocities are shared with: the section, in a kit the sound. */
  family: string;
  /** −100 to 100, where two files are the sides of one sound. */
  pan: number | undefined;
  /** The name of its layer, or the number of its velocity. */
  layer: string | undefined;
  /** The words of its name that give the layer; `undefined` where nothing but the layer's own name stands for it. */
  layerWords: string | undefined;
  /** The velocities that its name gives. */
  velocities: { low: number; high: number } | undefined;
  /** Whether it stands for all layers of its key, since it is the only one there and names none. */
  isForAllLayers: boolean;
  /** Where it stands among those of its key and layer: by its number, then by its word. */
  turn: number;
  turnWord: string;
  lowKey: number;
  highKey: number;
  lowVelocity: number;
  highVelocity: number;
  position: number;
  length: number;
  /** Why it stands where it does, as sentences. */
  because: string[];
}

/** A recording that is no part of the instrument. */
export interface LeftOutRecording {
  path: string;
  because: string;
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
    articulation: '',
    microphone: '',
    pan: undefined,
    layer: undefined,
    layerWords: undefined,
    velocities: undefined,
    isForAllLayers: false,
    turn: 0,
    turnWord: '',
    lowKey: key,
    highKey: key,
    lowVelocity: 1,
    highVelocity: 127,
    position: 1,
    length: 1,
    because: [],
  };
}
