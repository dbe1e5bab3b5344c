import type { PlayedNote } from '../playing/sweep/playedNote';
import type { RegionPair } from './causes';
import { endOtherwise } from './endingDifferences';
import { heldLongEnough, heldToTheEnd } from './heldLongEnough';
import { phrasesOf } from './phrases';
import { probesOf } from './probes';
import type { ComparedSide, RegionLikeness } from './regionLikeness';
import { soundColumns } from './regionLikeness';
import type { RegionPairing } from './startedRegions';
import { notesFor, pairRegions, regionsStarted } from './startedRegions';

/** Notes that start regions of which the texts do not tell that they sound alike. */
export interface Doubt {
  /** The regions without a partner that sounds alike. */
  a: number[];
  b: number[];
  /** The first of them on each side that belong together. */
  pair: Partial<RegionPair>;
  /** How to play them: the first differs in what was found, the others are tried where it is not heard. */
  notes: PlayedNote[];
}

/** What the texts tell before anything is rendered. */
export interface Looked {
  /** Notes that were looked at. */
  notes: number;
  doubts: Doubt[];
}

/**
 * Plays notes on both sides such that every region of either that can sound starts, without rendering them, and says
 * for which of them the texts and the bytes of the samples do not settle that they sound alike. Ranges of regions that
 * sound alike and start under other conditions are tried at their ends.
 */
export async function lookForDoubts(
  sides: readonly [ComparedSide, ComparedSide],
  likeness: RegionLikeness,
  signal?: AbortSignal,
): Promise<Looked> {
  const [a, b] = sides;
  const doubts = new Map<string, Doubt>();
  const tried = new Set<string>();
  const notes = notesFor([a.playable, b.playable]);
  const look = async (note: PlayedNote): Promise<RegionPairing> => {
    const [ofA, ofB] = [regionsStarted(a.playable, note), regionsStarted(b.playable, note)];
    const pairing = await pairRegions(ofA, ofB, likeness);
    if (pairing.a.length > 0 || pairing.b.length > 0) addDoubt(doubts, pairing, note, sides);
    return pairing;
  };
  for (const note of notes) {
    signal?.throwIfAborted();
    const { alike } = await look(note);
    for (const [ofA, ofB] of alike) {
      const pair = `${ofA} ${ofB}`;
      if (tried.has(pair) || likeness.haveSameConditions(ofA, ofB)) continue;
      tried.add(pair);
      for (const probe of probesOf(note, sides, { a: ofA, b: ofB })) await look(probe);
    }
  }
  return { notes: notes.length, doubts: [...doubts.values()] };
}

/** Notes that leave the same regions without partners are one doubt. */
function addDoubt(
  doubts: Map<string, Doubt>,
  { a, b }: RegionPairing,
  note: PlayedNote,
  sides: readonly [ComparedSide, ComparedSide],
): void {
  const name = `${a.join()} ${b.join()}`;
  const known = doubts.get(name);
  if (known) known.notes.push(note);
  else doubts.set(name, { a, b, notes: [note], pair: bestPair(a, b, sides) });
}

/** Each region of the first side in a doubt with the one of the second that shares most with it. */
export function pairsOf({ a, b }: Doubt, sides: readonly [ComparedSide, ComparedSide]): RegionPair[] {
  return b.length === 0 ? [] : a.map((region) => ({ a: region, b: nearestTo(region, b, sides) }));
}

/** The first region of the first side, and the one of the second that shares most with it. */
function bestPair(
  a: readonly number[],
  b: readonly number[],
  [one, other]: readonly [ComparedSide, ComparedSide],
): Partial<RegionPair> {
  const [first] = a;
  if (first === undefined || b.length === 0) return first === undefined ? { b: b[0] } : { a: first };
  return { a: first, b: nearestTo(first, b, [one, other]) };
}

function nearestTo(
  first: number,
  b: readonly number[],
  [one, other]: readonly [ComparedSide, ComparedSide],
): number {
  const path = ({ program }: ComparedSide, region: number) => program.samples[program.sample[region]];
  const likenessOf = (region: number) =>
    (path(one, first) === path(other, region) ? soundColumns.length : 0) +
    soundColumns.filter((name) => one.program[name][first] === other.program[name][region]).length;
  return b.reduce((found, region) => (likenessOf(region) > likenessOf(found) ? region : found));
}

/** Notes of a doubt that are tried at the most (our choice). */
const mostNotes = 24;

/**
 * The notes by which a doubt is heard, in the order in which to try them: as it was found, held to the end of the samples
 * where that may show more, and with what differing opcodes name, unless the same settings were heard to be alike before.
 */
export async function notesToHear(
  doubt: Doubt,
  sides: readonly [ComparedSide, ComparedSide],
  likeness: RegionLikeness,
  isKnownAlike: boolean,
): Promise<PlayedNote[]> {
  const { a, b, pair, notes } = doubt;
  const started = [
    { source: sides[0], regions: a },
    { source: sides[1], regions: b },
  ];
  const tried = notes.slice(0, mostNotes);
  const whole = pair.a !== undefined && pair.b !== undefined ? { a: pair.a, b: pair.b } : undefined;
  const isLong = !whole || !(await likeness.hasSameSample(whole.a, whole.b)) || endsDiffer(sides, whole);
  if (isLong) tried.push(await heldToTheEnd(notes[0], started));
  if (whole && !isKnownAlike) tried.push(...probesOf(notes[0], sides, whole));
  const ending = pairsOf(doubt, sides).find((one) => endOtherwise(sides, one));
  if (ending) tried.splice(mostNotes / 2, 0, ...phrasesOf(notes[0], sides, ending));
  const held: PlayedNote[] = [];
  for (const note of tried.slice(0, mostNotes)) held.push(await heldLongEnough(note, started));
  return held;
}

function endsDiffer([a, b]: readonly [ComparedSide, ComparedSide], pair: RegionPair): boolean {
  const names = ['end', 'offset', 'loopStart', 'loopEnd', 'loopMode'] as const;
  return names.some((name) => a.program[name][pair.a] !== b.program[name][pair.b]);
}
