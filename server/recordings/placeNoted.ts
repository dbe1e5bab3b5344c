import { isOfSession } from './nameText';
import type { NamePart } from './parts';
import type { LeftOutRecording, Placed } from './placed';
import { placedAt } from './placed';
import { rootReason, wordReasons } from './reasons';
import type { Recording } from './recording';
import type { Root } from './root';
import type { Pending, UnknownWord, WordKind } from './unknownWords';
import { unknownWordsOf } from './unknownWords';

/** What was decided besides where recordings are placed. */
interface Told {
  leftOut: LeftOutRecording[];
  /** Sentences. */
  notes: string[];
}

/** Places recordings that have notes at their roots: articulations, microphones, sides, releases, layers and turns, as their paths say. */
export function placeNoted(
  recordings: readonly Recording[],
  parts: readonly NamePart[],
  roots: readonly (Root | undefined)[],
  told: Told,
): Placed[] {
  const pending = rootedOf(recordings, parts, roots, told);
  const unknown = unknownWordsOf(pending);
  const sides = areSides(pending);
  const velocities = velocityNumbers(pending);
  if (sides) told.notes.push('Left and right are files of their own: both sound together, on their sides.');
  for (const { one, part } of pending) {
    one.because.push(...wordReasons(part));
    applyWords(one, part, unknown.get(one) ?? []);
    if (sides) one.pan = part.side === 'left' ? -100 : part.side === 'right' ? 100 : undefined;
    if (one.layer !== undefined || one.velocities) continue;
    const velocity = part.numbers.find((number) => velocities.has(number));
    if (velocity === undefined) continue;
    one.layer = `#${velocity}`;
    one.turn = part.turn ?? 0;
  }
  told.notes.push(...unknownWordNotes(unknown));
  return pending.map(({ one }) => one);
}

/** The recordings with a root; those without one, and those of the session, are left out. */
function rootedOf(
  recordings: readonly Recording[],
  parts: readonly NamePart[],
  roots: readonly (Root | undefined)[],
  { leftOut }: Told,
): Pending {
  const named = roots.filter((root) => root?.note !== undefined).length;
  return recordings.flatMap((recording, at) => {
    const root = roots[at];
    const part = parts[at];
    const isOdd = root?.note === undefined && named > recordings.length / 2;
    if (!root || (isOdd && isOfSession(part.words))) {
      const because = root
        ? 'its name gives no note and means something else'
        : 'neither its name nor its sound gives a note';
      leftOut.push({ path: recording.path, because });
      return [];
    }
    const one = placedAt(recording, root);
    one.because.push(rootReason(recording, root));
    return [{ one, part }];
  });
}

function applyWords(one: Placed, part: NamePart, unknown: readonly UnknownWord[]): void {
  const words = (kind: WordKind) =>
    unknown.filter((word) => word.kind === kind && word.word !== '').map(({ word }) => word);
  const layers = words('layer');
  one.isRelease = part.isRelease === true || words('release').length > 0;
  one.articulation = joined(
    part.articulation,
    ...words('articulation'),
    ...(part.layer === undefined ? [] : layers),
  );
  one.microphone = joined(part.microphone, ...words('microphone'));
  one.section = joined(one.articulation, one.microphone, one.isRelease ? 'release' : '');
  one.family = one.section;
  const isLayered = unknown.some(({ kind }) => kind === 'layer');
  one.layer = part.layer ?? (isLayered ? layers.join(' ') : undefined);
  one.layerWords = part.layerWords;
  one.velocities = part.velocities;
  one.turn = part.turn ?? part.numbers.at(-1) ?? 0;
  one.turnWord = words('turn').join(' ');
}

function joined(...words: readonly (string | undefined)[]): string {
  return words.filter((word) => word !== undefined && word !== '').join(' ');
}

/** What unknown words were taken for, where layers, groups and turns do not tell of it themselves. */
function unknownWordNotes(unknown: ReadonlyMap<Placed, readonly UnknownWord[]>): string[] {
  const words = (kind: WordKind) => [
    ...new Set(
      [...unknown.values()].flat().flatMap((one) => (one.kind === kind && one.word !== '' ? [one.word] : [])),
    ),
  ];
  const list = (some: readonly string[]) => some.map((word) => `"${word}"`).join(', ');
  const [releases, microphones] = [words('release'), words('microphone')];
  return [
    ...(releases.length === 0
      ? []
      : [
          `Recordings called ${list(releases)} are much shorter and softer than the rest, so they are read as sounds of keys that go up. Listen to them.`,
        ]),
    ...(microphones.length === 0
      ? []
      : [
          `Recordings called ${list(microphones)} have exactly the same length on each key, so they are read as several microphones at the same strokes. They sound together.`,
        ]),
  ];
}

/** Whether left and right are the sides of the same sounds: each has its other one. */
function areSides(pending: Pending): boolean {
  const roots = (side: NamePart['side']) =>
    pending
      .filter(({ part }) => part.side === side)
      .map(({ one }) => one.root)
      .sort((a, b) => a - b)
      .join();
  return roots('left') !== '' && roots('left') === roots('right');
}

/** Numbers of names that are velocities: the same few on most keys, up to at least 100 (our choice). */
function velocityNumbers(pending: Pending): ReadonlySet<number> {
  const keysOf = new Map<number, Set<number>>();
  for (const { one, part } of pending)
    for (const number of part.numbers) keysOf.set(number, (keysOf.get(number) ?? new Set()).add(one.root));
  const keys = new Set(pending.map(({ one }) => one.root)).size;
  const numbers = [...keysOf].filter(([, on]) => on.size > keys / 2).map(([number]) => number);
  const isVelocity =
    numbers.length > 1 && numbers.length <= 16 && Math.max(...numbers) >= 100 && Math.max(...numbers) <= 127;
  return new Set(isVelocity ? numbers : []);
}
