import { drumKeysOf } from '../trade/names/drumKeys';
import { placeKit } from './kit';
import type { NamePart } from './parts';
import { partsOf } from './parts';
import type { LeftOutRecording, Placed } from './placed';
import { placementNotes } from './placementNotes';
import { placeNoted } from './placeNoted';
import { placeVelocities } from './placeVelocities';
import type { Recording } from './recording';
import { findRoots } from './roots';
import { spread } from './spread';

/** What an instrument can be made of. */
export interface RecordingsReading {
  placed: Placed[];
  leftOut: LeftOutRecording[];
  /** What was decided, each as a sentence. */
  notes: string[];
}

/** The share of files from which on a folder is a kit: that of names of drums, that of files without a root (our choice). */
const fewestDrums = 0.4;
const fewestRoots = 0.5;

/** Makes an instrument of recordings: keys, layers, round robins, roots and tuning, each with its reason. */
export function readRecordings(all: readonly Recording[]): RecordingsReading {
  const { kept: sounding, leftOut } = withoutOthers(all);
  const { roots, believed, notes } = findRoots(sounding);
  const parts = partsOf(sounding, roots);
  const kind = believed?.reading.kind;
  const areNames = kind === 'names' || kind === 'lines';
  const drums = sounding.filter(({ path }) => drumKeysOf(path).length > 0).length;
  const withRoot = roots.filter(
    (root) => root?.from === 'pitch' || (root?.note !== undefined && areNames),
  ).length;
  // Numbers that alone tell the sounds apart are the keys of one sound.
  const areKeys =
    kind === 'numbers' && !roots.includes(undefined) && new Set(parts.map(({ rest }) => rest)).size === 1;
  const isKit =
    !areKeys &&
    ((!areNames && drums >= fewestDrums * sounding.length) || withRoot < fewestRoots * sounding.length);
  // What was said of notes does not hold of sounds that have none.
  if (isKit) notes.length = 0;
  const placed = isKit
    ? placeKit(sounding, parts, roots, believed?.reading, notes)
    : placeNoted(sounding, parts, roots, { leftOut, notes });
  notes.push(...placeVelocities(placed));
  if (!isKit) {
    spread(placed);
    notes.push(...placementNotes(placed));
  }
  return { placed, leftOut, notes };
}

/** Leaves out silence and second copies; copies that their names make another layer, group or side of are kept. */
function withoutOthers(all: readonly Recording[]): { kept: Recording[]; leftOut: LeftOutRecording[] } {
  const kept: Recording[] = [];
  const leftOut: LeftOutRecording[] = [];
  const parts = partsOf(
    all,
    all.map(() => undefined),
  );
  const sameAs = (at: number) => `${all[at].content}\n${placeByWords(parts[at])}`;
  // Of copies the one with the plainest path counts.
  const first = new Map<string, Recording>();
  const plainness = (at: number) => all[at].path.split('/').length * 1000 + all[at].path.length;
  const order = [...all.keys()].sort(
    (a, b) => plainness(a) - plainness(b) || (all[a].path < all[b].path ? -1 : 1),
  );
  for (const at of order) if (!first.has(sameAs(at))) first.set(sameAs(at), all[at]);
  for (const [at, one] of all.entries()) {
    const copyOf = first.get(sameAs(at));
    if (one.loudness === undefined) leftOut.push({ path: one.path, because: 'it is silent' });
    else if (copyOf && copyOf !== one)
      leftOut.push({ path: one.path, because: `it holds the same as "${copyOf.path}"` });
    else kept.push(one);
  }
  return { kept, leftOut };
}

/** What known words make of a recording besides a turn. */
function placeByWords({ articulation, microphone, isRelease, layer, velocities, side }: NamePart): string {
  return JSON.stringify([articulation, microphone, isRelease, layer, velocities, side]);
}
