import { median } from '../../model/median';
/** A time of one recording in another one: `start + scale · seconds`. */
export interface TimeMap {
  startSeconds: number;
  scale: number;
}

/** A note as it is looked for: when it begins in the piece, and its pitch where it has one. */
export interface SoughtNote {
  seconds: number;
  hertz: number | null;
}

/** Where each of the notes was found; `undefined` for those that were not. */
export interface Alignment {
  map: TimeMap;
  found: (number | undefined)[];
}

/** Speeds at which a recording may run: as played, or with a rate of 44.1 taken for 48 kHz and the other way round. */
const scales = [1, 48 / 44.1, 44.1 / 48];
/** Notes and onsets at the start from which a first fit is made. */
const firstNotes = 24;
const firstOnsets = 60;
const startingNotes = 8;
/** How far an onset may be from where it is looked for: in the first fit and from note to note (our choice). */
const nearSeconds = 0.04;
const trackedSeconds = 0.06;
const samePitchCents = 60;
/** What another speed costs, in notes: less than one. */
const otherSpeedCost = 0.5;
/** A note so near to the line is no outlier. */
const leastMissSeconds = 0.002;

/**
 * Finds the notes of a piece in a recording of it by where notes begin in it: an unknown silence at the start, a clock that
 * runs a little fast or slow, and notes that are missing do not matter. As notes of a sweep follow one another at equal
 * times, their pitches decide between places that fit equally well. `undefined` where nothing fits.
 */
export function align(
  notes: readonly SoughtNote[],
  onsets: readonly number[],
  pitchAt: (onset: number) => number | null,
): Alignment | undefined {
  let best: { map: TimeMap; score: number } | undefined;
  const pitches = new Map<number, number | null>();
  const pitchOf = (onset: number) => {
    const known = pitches.get(onset);
    if (known !== undefined) return known;
    const pitch = pitchAt(onset);
    pitches.set(onset, pitch);
    return pitch;
  };
  for (const scale of scales) {
    for (const note of notes.slice(0, startingNotes)) {
      for (const onset of onsets.slice(0, firstOnsets)) {
        const map = { startSeconds: onset - scale * note.seconds, scale };
        const score = scoreOf(map, notes.slice(0, firstNotes), onsets, pitchOf);
        if (!best || score > best.score) best = { map, score };
      }
    }
  }
  return best && best.score > 0 ? tracked(notes, onsets, best.map) : undefined;
}

/** How many of the first notes are where a map puts them, those with the right pitch counted thrice. */
function scoreOf(
  map: TimeMap,
  notes: readonly SoughtNote[],
  onsets: readonly number[],
  pitchOf: (onset: number) => number | null,
): number {
  let score = 0;
  const cents: number[] = [];
  for (const { seconds, hertz } of notes) {
    const onset = nearest(onsets, recordedTime(map, seconds), nearSeconds);
    if (onset === undefined) continue;
    score += 1;
    const pitch = hertz === null ? null : pitchOf(onset);
    if (hertz !== null && pitch !== null) cents.push(1200 * Math.log2(pitch / hertz));
  }
  const middle = median(cents);
  const agreeing = cents.filter((one) => Math.abs(one - middle) < samePitchCents).length;
  // A piece that is transposed as a whole is less likely: shifted by a note, a chromatic one would fit as well.
  const weight = Math.abs(middle) < samePitchCents ? 2 : 1;
  const isUsual = map.scale === scales[0];
  return score + weight * agreeing - (cents.length - agreeing) - (isUsual ? 0 : otherSpeedCost);
}

/** Follows the notes from one to the next, and fits a straight line through those that were found. */
function tracked(notes: readonly SoughtNote[], onsets: readonly number[], map: TimeMap): Alignment {
  let late = 0;
  const found = notes.map(({ seconds }) => {
    const place = recordedTime(map, seconds) + late;
    const onset = nearest(onsets, place, trackedSeconds);
    if (onset !== undefined) late += 0.4 * (onset - place);
    return onset;
  });
  const pairs = notes.flatMap(({ seconds }, at) => {
    const onset = found[at];
    return onset === undefined ? [] : [[seconds, onset] as const];
  });
  return { map: fitted(pairs, map), found };
}

/** The straight line through pairs of times that the squares of distances are least from; outliers are left out once. */
export function fitted(pairs: readonly (readonly [number, number])[], guess: TimeMap): TimeMap {
  let map = leastSquares(pairs, guess);
  const misses = pairs.map(([from, to]) => Math.abs(to - recordedTime(map, from)));
  const most = Math.max(leastMissSeconds, 3 * median(misses));
  map = leastSquares(
    pairs.filter((_, at) => misses[at] <= most),
    map,
  );
  return map;
}

function leastSquares(pairs: readonly (readonly [number, number])[], guess: TimeMap): TimeMap {
  const [first] = pairs;
  if (!first) return guess;
  const count = pairs.length;
  const meanFrom = pairs.reduce((sum, [from]) => sum + from, 0) / count;
  const meanTo = pairs.reduce((sum, [, to]) => sum + to, 0) / count;
  let [product, square] = [0, 0];
  for (const [from, to] of pairs) {
    product += (from - meanFrom) * (to - meanTo);
    square += (from - meanFrom) ** 2;
  }
  const scale = count > 2 && square > 0 ? product / square : guess.scale;
  return { startSeconds: meanTo - scale * meanFrom, scale };
}

/** Where a time of the piece is in the recording. */
export function recordedTime({ startSeconds, scale }: TimeMap, seconds: number): number {
  return startSeconds + scale * seconds;
}

/** The time in a rising list that is nearest to one, where it is within a reach. */
function nearest(times: readonly number[], time: number, reach: number): number | undefined {
  let low = 0;
  let high = times.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle] < time) low = middle + 1;
    else high = middle;
  }
  const [before, after] = [times[low - 1], times[low]] as [number | undefined, number | undefined];
  const distance = (one: number | undefined) =>
    one === undefined ? Number.POSITIVE_INFINITY : Math.abs(one - time);
  const closest = distance(before) <= distance(after) ? before : after;
  return distance(closest) <= reach ? closest : undefined;
}
