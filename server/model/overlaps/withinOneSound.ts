import type { Instrument } from '../instrument';
import { nameOf } from '../paths';
import type { Steps } from '../steps';
import { piecesInStep } from '../steps';
import type { RegionOverlap } from './overlaps';
import type { Rectangle } from './rectangles';
import { intersectionOf, rectangleOf } from './rectangles';

/** Keys that two sounds share where both are meant; neighbours that overlap by mistake share fewer. Our choice: an octave. */
const fewestShared = 12;
/** Letters that a word has at the least to tell of a sound, as names of notes and sides have fewer. Our choice. */
const soundWord = /\p{L}{3,}/u;

/**
 * The overlaps whose samples are not two sounds laid over one another. Regions under one header make a sound when the names of
 * their samples begin with the same word. Two sounds are laid over one another where all regions of one and all of the other
 * share an octave or more, most keys and all velocities of one of the two: neighbours of a drum kit share a key or two, layers
 * of velocity a few velocities, and the halves of a split keyboard a few keys. Worked out in steps.
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
  const sounds = new Map<string, Rectangle>();
  for (const [at, region] of instrument.regions.entries()) {
    if (at % piecesInStep === piecesInStep - 1) yield at / instrument.regions.length;
    const sound = soundOf(region);
    const rectangle = sound === undefined ? undefined : rectangleOf(instrument, region);
    if (sound === undefined || !rectangle) continue;
    const known = sounds.get(sound);
    sounds.set(sound, known ? aroundBoth(known, rectangle) : rectangle);
  }
  return overlaps.filter((overlap) => {
    if (!isOfTwo(overlap)) return true;
    const one = sounds.get(soundOf(overlap.region) ?? '');
    const other = sounds.get(soundOf(overlap.other) ?? '');
    return !one || !other || !areLaidOver(one, other);
  });
}

function areLaidOver(one: Rectangle, other: Rectangle): boolean {
  const shared = intersectionOf(one, other);
  if (!shared || keysOf(shared) < fewestShared) return false;
  return [one, other].some(
    (whole) =>
      shared.lowVelocity === whole.lowVelocity &&
      shared.highVelocity === whole.highVelocity &&
      keysOf(shared) * 2 > keysOf(whole),
  );
}

function aroundBoth(one: Rectangle, other: Rectangle): Rectangle {
  return {
    lowKey: Math.min(one.lowKey, other.lowKey),
    highKey: Math.max(one.highKey, other.highKey),
    lowVelocity: Math.min(one.lowVelocity, other.lowVelocity),
    highVelocity: Math.max(one.highVelocity, other.highVelocity),
  };
}

function keysOf({ lowKey, highKey }: Rectangle): number {
  return highKey - lowKey + 1;
}

function firstWord(path: string | undefined): string | undefined {
  return path === undefined ? undefined : soundWord.exec(nameOf(path))?.[0].toLowerCase();
}
