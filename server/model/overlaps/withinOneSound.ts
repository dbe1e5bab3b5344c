import type { Instrument } from '../instrument';
import { nameOf } from '../paths';
import type { Steps } from '../steps';
import { piecesInStep } from '../steps';
import type { RegionOverlap } from './overlaps';
import type { Rectangle } from './rectangles';
import { rectangleOf } from './rectangles';

/** Keys that two sounds share where both are meant; neighbours that overlap by mistake share fewer. Our choice: an octave. */
const fewestShared = 12;
/** Letters that a word has at the least to tell of a sound, as names of notes and sides have fewer. Our choice. */
const soundWord = /\p{L}{3,}/u;

/** The keys and velocities that the regions of a sound answer. */
interface Reach {
  /** 1 at each key. */
  keys: Uint8Array;
  lowVelocity: number;
  highVelocity: number;
}

/**
 * The overlaps whose samples are not two sounds laid over one another. Regions under one header make a sound when the names of
 * their samples begin with the same word. Two sounds are laid over one another where they share an octave or more, half of the keys and all
 * velocities of one of the two: neighbours of a drum kit share a key or two, layers of velocity a few velocities, and the halves of a
 * split keyboard a few keys. Worked out in steps.
 */
export function* withinOneSound(
  instrument: Instrument,
  overlaps: readonly RegionOverlap[],
): Steps<RegionOverlap[]> {
  const soundOf = (region: number) => {
    const word = firstWord(instrument.samplePath(region));
    return word === undefined ? undefined : `${instrument.parent(region)} ${word}`;
  };
  const isOfTwo = ({ region, other }: RegionOverlap) => {
    const [one, two] = [soundOf(region), soundOf(other)];
    return one !== undefined && two !== undefined && one !== two;
  };
  if (!overlaps.some(isOfTwo)) return [...overlaps];
  const sounds = new Map<string, Reach>();
  for (const [at, region] of instrument.regions.entries()) {
    if (at % piecesInStep === piecesInStep - 1) yield at / instrument.regions.length;
    const sound = soundOf(region);
    const rectangle = sound === undefined ? undefined : rectangleOf(instrument, region);
    if (sound !== undefined && rectangle) sounds.set(sound, withRectangle(sounds.get(sound), rectangle));
  }
  return overlaps.filter((overlap) => {
    if (!isOfTwo(overlap)) return true;
    const one = sounds.get(soundOf(overlap.region) ?? '');
    const other = sounds.get(soundOf(overlap.other) ?? '');
    return !one || !other || !areLaidOver(one, other);
  });
}

function withRectangle(
  known: Reach | undefined,
  { lowKey, highKey, lowVelocity, highVelocity }: Rectangle,
): Reach {
  const keys = known?.keys ?? new Uint8Array(128);
  keys.fill(1, lowKey, highKey + 1);
  return {
    keys,
    lowVelocity: Math.min(lowVelocity, known?.lowVelocity ?? lowVelocity),
    highVelocity: Math.max(highVelocity, known?.highVelocity ?? highVelocity),
  };
}

function areLaidOver(one: Reach, other: Reach): boolean {
  const shared = countOf(one.keys.map((key, at) => key & other.keys[at]));
  if (shared < fewestShared) return false;
  const low = Math.max(one.lowVelocity, other.lowVelocity);
  const high = Math.min(one.highVelocity, other.highVelocity);
  return [one, other].some(
    ({ keys, lowVelocity, highVelocity }) =>
      low === lowVelocity && high === highVelocity && shared * 2 >= countOf(keys),
  );
}

function countOf(keys: Uint8Array): number {
  return keys.reduce((sum, key) => sum + key, 0);
}

function firstWord(path: string | undefined): string | undefined {
  return path === undefined ? undefined : soundWord.exec(nameOf(path))?.[0].toLowerCase();
}
