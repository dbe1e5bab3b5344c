import { folderOf } from '../model/paths';
import type { NoteReading } from './noteNames';
import { noteReadings } from './noteNames';

/** The share of names that have to agree with what is known of the sounds for their notes to be believed (our choice). */
const leastAgreement = 0.6;
/** Numbers that count from anywhere have to agree so well, and at least so many of them (our choice). */
const numberAgreement = 0.9;
const fewestNumbers = 4;

/** The reading of names that is believed. */
export interface Believed {
  reading: NoteReading;
  /** What has to be added to most of its keys. */
  shift: number;
  /** What has to be added to those in a folder where that is something else; each differs by octaves. */
  folderShifts: ReadonlyMap<string, number>;
}

/**
 * The reading of names that agrees best with what is known of the sounds, by position as a MIDI key; where nothing is known, that
 * which tells the most.
 */
export function believedReading(
  paths: readonly string[],
  known: readonly (number | undefined)[],
): Believed | undefined {
  const folders = paths.map(folderOf);
  let best: (Believed & { score: number }) | undefined;
  for (const reading of noteReadings(paths)) {
    const judged = judge(reading, folders, known);
    if (judged && judged.score > (best?.score ?? 0)) best = { reading, ...judged };
  }
  return best;
}

/** The key that a name tells, as it is believed. */
export function keyByName(believed: Believed | undefined, at: number, path: string): number | undefined {
  const key = believed?.reading.keys[at];
  if (!believed || key === undefined) return undefined;
  return key + (believed.folderShifts.get(folderOf(path)) ?? believed.shift);
}

type Judged = Omit<Believed, 'reading'> & { score: number };

function judge(
  { kind, keys }: NoteReading,
  folders: readonly string[],
  known: readonly (number | undefined)[],
): Judged | undefined {
  const told = keys.filter((key) => key !== undefined).length / keys.length;
  const counts = new ShiftCounts();
  for (const [at, key] of keys.entries()) {
    const sound = known[at];
    if (key !== undefined && sound !== undefined) counts.add(folders[at], Math.round(sound) - key);
  }
  if (counts.all === 0) return judgeAlone(kind, keys, told);
  const { shift, count } = counts.most();
  const { folderShifts, more } = counts.inFolders(shift);
  const agreement = (count + more) / counts.all;
  const isOctaves = shift % 12 === 0;
  const isCount =
    kind === 'numbers' && !isOctaves && agreement >= numberAgreement && counts.all >= fewestNumbers;
  const isPlausible =
    isCount || Math.abs(shift) <= { names: 36, lines: 0, numbers: isOctaves ? 24 : 0 }[kind];
  if (!isPlausible || agreement < leastAgreement * (isOctaves || isCount ? 0.8 : 1.3)) return undefined;
  return { shift, folderShifts, score: told * agreement + (kind === 'names' ? 0.1 : 0) };
}

/** Where nothing is known of the sounds. */
function judgeAlone(kind: NoteReading['kind'], keys: NoteReading['keys'], told: number): Judged | undefined {
  // Numbers alone may count anything; as keys they rise by more than their order does, and begin above the lowest of a piano.
  const isOfKeys =
    kind === 'names' ||
    (kind === 'numbers' && Math.min(...keys.map((key) => key ?? 127)) >= 21 && told === 1);
  return isOfKeys && new Set(keys).size > 1 ? { shift: 0, folderShifts: new Map(), score: told } : undefined;
}

/** By how much sounds lie above the keys that names tell, counted by folder. */
class ShiftCounts {
  all = 0;
  readonly #byFolder = new Map<string, Map<number, number>>();

  add(folder: string, shift: number): void {
    this.all++;
    const counts = this.#byFolder.get(folder) ?? new Map<number, number>();
    counts.set(shift, (counts.get(shift) ?? 0) + 1);
    this.#byFolder.set(folder, counts);
  }

  /** The commonest of all; of equal ones the least. */
  most(): { shift: number; count: number } {
    const sum = new Map<number, number>();
    for (const counts of this.#byFolder.values())
      for (const [shift, count] of counts) sum.set(shift, (sum.get(shift) ?? 0) + count);
    return commonest(sum);
  }

  /** Folders in which another shift is the rule, octaves away; and how many names it holds for there beyond those of `shift`. */
  inFolders(shift: number): { folderShifts: Map<string, number>; more: number } {
    const folderShifts = new Map<string, number>();
    let more = 0;
    for (const [folder, counts] of this.#byFolder) {
      const own = commonest(counts);
      const all = [...counts.values()].reduce((sum, count) => sum + count, 0);
      if (own.shift === shift || (own.shift - shift) % 12 !== 0) continue;
      if (own.count < 2 || own.count < leastAgreement * all) continue;
      folderShifts.set(folder, own.shift);
      more += own.count - (counts.get(shift) ?? 0);
    }
    return { folderShifts, more };
  }
}

function commonest(counts: ReadonlyMap<number, number>): { shift: number; count: number } {
  const [first] = [...counts].sort((a, b) => b[1] - a[1] || Math.abs(a[0]) - Math.abs(b[0]));
  return { shift: first?.[0] ?? 0, count: first?.[1] ?? 0 };
}
