import { noteNameOf } from '../model/keys';
import { spreadKeys } from '../trade/keySpread';
import { drumKeysOf } from '../trade/names/drumKeys';
import { placeKit } from './kit';
import { isOfSession } from './nameText';
import type { NamePart } from './parts';
import { partsOf } from './parts';
import type { Placed } from './placed';
import { grouped, placedAt } from './placed';
import { placeVelocities } from './placeVelocities';
import { rootReason, wordReasons } from './reasons';
import type { Recording } from './recording';
import type { Root } from './roots';
import { findRoots } from './roots';

/** A recording that is no part of the instrument. */
export interface LeftOutRecording {
  path: string;
  because: string;
}

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
  const { roots, reading, notes } = findRoots(sounding);
  const parts = partsOf(sounding, roots);
  const drums = sounding.filter(({ path }) => drumKeysOf(path).length > 0).length;
  const withRoot = roots.filter(
    (root) => root?.from === 'pitch' || (root?.noteText !== undefined && reading?.kind === 'names'),
  ).length;
  const isKit =
    (reading?.kind !== 'names' && drums >= fewestDrums * sounding.length) ||
    withRoot < fewestRoots * sounding.length;
  // What was said of notes does not hold of sounds that have none.
  if (isKit) notes.length = 0;
  const placed = isKit
    ? placeKit(sounding, parts, roots, reading, notes)
    : placeNotes(sounding, parts, roots, reading !== undefined, { leftOut, notes });
  notes.push(...placeVelocities(placed));
  if (!isKit) spread(placed);
  notes.push(...togetherNotes(placed, parts), ...lackingLayers(placed));
  return { placed, leftOut, notes };
}

/** Leaves out silence and second copies. */
function withoutOthers(all: readonly Recording[]): { kept: Recording[]; leftOut: LeftOutRecording[] } {
  const kept: Recording[] = [];
  const leftOut: LeftOutRecording[] = [];
  // Of copies the one with the plainest path counts.
  const first = new Map<string, Recording>();
  const plainness = ({ path }: Recording) => path.split('/').length * 1000 + path.length;
  for (const one of [...all].sort((a, b) => plainness(a) - plainness(b) || (a.path < b.path ? -1 : 1)))
    if (!first.has(one.content)) first.set(one.content, one);
  for (const one of all) {
    const copyOf = first.get(one.content);
    if (one.loudness === undefined) leftOut.push({ path: one.path, because: 'it is silent' });
    else if (copyOf && copyOf !== one)
      leftOut.push({ path: one.path, because: `it holds the same as "${copyOf.path}"` });
    else kept.push(one);
  }
  return { kept, leftOut };
}

function placeNotes(
  recordings: readonly Recording[],
  parts: readonly NamePart[],
  roots: readonly (Root | undefined)[],
  areNamed: boolean,
  told: { leftOut: LeftOutRecording[]; notes: string[] },
): Placed[] {
  const named = roots.filter((root) => root?.noteText !== undefined).length;
  const placed: Placed[] = [];
  const pending: { one: Placed; part: NamePart }[] = [];
  for (const [at, recording] of recordings.entries()) {
    const root = roots[at];
    const part = parts[at] as NamePart;
    const isOdd = areNamed && root?.noteText === undefined && named > recordings.length / 2;
    if (!root || (isOdd && isOfSession(part.words))) {
      const because = root
        ? 'its name tells no note, and speaks of something else'
        : 'neither its name nor its sound tells a note';
      told.leftOut.push({ path: recording.path, because });
      continue;
    }
    const one = placedAt(recording, root);
    one.because.push(rootReason(recording, root));
    placed.push(one);
    pending.push({ one, part });
  }
  const variants = variantsOf(pending);
  const sides = sidesOf(pending);
  const velocities = velocityNumbers(pending);
  if (sides) told.notes.push('Left and right are files of their own: both sound together, on their sides.');
  for (const { one, part } of pending) {
    const variant = variants.kind === 'articulation' ? variants.of(part) : '';
    one.because.push(...wordReasons(part));
    one.isRelease = part.isRelease === true;
    one.section = [part.articulation ?? variant, part.microphone ?? '', one.isRelease ? 'release' : '']
      .filter((word) => word !== '')
      .join(' ');
    one.family = one.section;
    one.layer = part.layer ?? (variants.kind === 'layer' ? variants.of(part) : undefined);
    if (sides) one.pan = part.side === 'left' ? -100 : part.side === 'right' ? 100 : undefined;
    one.turn = part.turn ?? part.numbers.at(-1) ?? 0;
    const velocity = part.numbers.find((number) => velocities.has(number));
    if (one.layer === undefined && velocity !== undefined) {
      one.layer = `#${velocity}`;
      one.turn = part.turn ?? 0;
    }
  }
  return placed;
}

type Pending = readonly { one: Placed; part: NamePart }[];

/** Words without a known meaning that come back on several keys: layers where they differ in loudness, else articulations. */
function variantsOf(pending: Pending): {
  kind: 'none' | 'layer' | 'articulation';
  of: (part: NamePart) => string;
} {
  const of = (part: NamePart) => (known.has(part.rest) ? part.rest : '');
  const byRest = grouped(pending, ({ part }) => part.rest);
  const known = new Map(
    [...byRest].filter(([, list]) => new Set(list.map(({ one }) => one.root)).size > 1 || pending.length < 4),
  );
  if (known.size < 2 || known.size > 8) return { kind: 'none', of };
  const keys = grouped(pending, ({ one }) => String(one.root));
  const several = [...keys.values()].filter((list) => new Set(list.map(({ part }) => of(part))).size > 1);
  if (several.length < keys.size / 3) return { kind: 'none', of };
  const steps = several.map((list) => {
    const loudness = [...grouped(list, ({ part }) => of(part)).values()].map(
      (some) => some[0]?.one.recording.loudness ?? -70,
    );
    return Math.max(...loudness) - Math.min(...loudness);
  });
  const sorted = steps.sort((a, b) => a - b);
  return { kind: (sorted[Math.floor(sorted.length / 4)] ?? 0) >= 4 ? 'layer' : 'articulation', of };
}

/** Whether left and right are the sides of the same sounds: each has its other one. */
function sidesOf(pending: Pending): boolean {
  const left = pending.filter(({ part }) => part.side === 'left');
  const right = pending.filter(({ part }) => part.side === 'right');
  if (left.length === 0 || left.length !== right.length) return false;
  const roots = (list: Pending) =>
    list
      .map(({ one }) => one.root)
      .sort((a, b) => a - b)
      .join();
  return roots(left) === roots(right);
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

/** Spreads the roots of each group and layer over the keys. */
function spread(placed: readonly Placed[]): void {
  for (const members of grouped(placed, ({ section, layer }) => `${section}\n${layer ?? ''}`).values()) {
    const keys = spreadKeys(members.map(({ root }) => root));
    for (const one of members) {
      const range = keys.get(one.root);
      one.lowKey = range?.low ?? one.root;
      one.highKey = range?.high ?? one.root;
      if (one.lowKey !== one.highKey) one.because.push('It answers the keys that are nearest to its root.');
    }
  }
}

/** Articulations that lie on the same keys sound together as long as nothing parts them. */
function togetherNotes(placed: readonly Placed[], parts: readonly NamePart[]): string[] {
  const articulations = [...new Set(parts.map(({ articulation }) => articulation))].filter(
    (one) => one !== undefined,
  );
  if (articulations.length < 2 || new Set(placed.map(({ section }) => section)).size < 2) return [];
  return [
    `The articulations ${articulations.join(', ')} lie on the same keys and sound together. Part them with key switches, or make an instrument of each.`,
  ];
}

/** Says which keys have fewer layers than others of their group. */
function lackingLayers(placed: readonly Placed[]): string[] {
  return [...grouped(placed, ({ family }) => family)].flatMap(([family, members]) => {
    const layers = new Set(members.map(({ lowVelocity }) => lowVelocity)).size;
    const lacking = [...grouped(members, ({ root }) => String(root)).values()].filter(
      (list) => new Set(list.map(({ lowVelocity }) => lowVelocity)).size < layers,
    );
    if (lacking.length === 0) return [];
    const keys = lacking.map((list) => noteNameOf(list[0]?.root ?? 0)).join(', ');
    const where = family === '' ? '' : ` of ${family}`;
    return [
      `Not all layers${where} were recorded at ${keys}: there the nearest recordings of the same layer sound.`,
    ];
  });
}
