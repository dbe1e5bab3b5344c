import { median } from '../model/median';
import { counted } from '../model/wording/counted';
import { keyText } from '../model/wording/rangeWords';
import type { NoteReading } from './noteNames';
import { noteReadings } from './noteNames';
import type { Recording } from './recording';

/** The share of names that have to agree with the pitches for their notes to be believed where no pitch tells (our choice). */
const leastAgreement = 0.6;
/** Deviations below so many cents are left as they are: a tuning that nobody hears (our choice). */
const leastCents = 5;

/** At which key a recording sounds as it was recorded, and how far it is out of tune. */
export interface Root {
  key: number;
  /** What has to be added, in cents. */
  tuneCents: number;
  /** The text of the name that tells the note. */
  noteText: string | undefined;
  /** Where the key comes from. */
  from: 'pitch' | 'name' | 'file';
}

/** The roots of recordings, by position; `undefined` where nothing tells one. */
export interface Roots {
  roots: (Root | undefined)[];
  /** The reading of the names that is believed. */
  reading: NoteReading | undefined;
  notes: string[];
}

/**
 * Finds the root key of each recording: the pitch that was measured rules; where none is clear, the note in the file's name, in
 * the octave that the other names and their pitches agree on, or the root key that the file itself gives.
 */
export function findRoots(recordings: readonly Recording[]): Roots {
  const pitched = recordings.map(({ pitch }) => pitch);
  const best = believedReading(
    recordings.map(({ path }) => path),
    pitched,
  );
  const own = fileRoots(recordings);
  const notes: string[] = [];
  const roots = recordings.map(({ pitch, path }, at): Root | undefined => {
    const noteText = best?.reading.texts[at];
    const named = best?.reading.keys[at];
    const byName = named === undefined || best === undefined ? undefined : named + best.shift;
    if (pitch !== undefined) {
      const key = Math.round(pitch);
      const cents = Math.round((key - pitch) * 100);
      if (byName !== undefined && byName !== key)
        notes.push(
          `The name of "${path}" tells ${keyText(byName)}, but it sounds ${keyText(key)}: the pitch is taken. Listen to it.`,
        );
      return { key, tuneCents: Math.abs(cents) < leastCents ? 0 : cents, noteText, from: 'pitch' };
    }
    if (byName !== undefined) return { key: byName, tuneCents: 0, noteText, from: 'name' };
    const key = own[at];
    return key === undefined ? undefined : { key, tuneCents: 0, noteText, from: 'file' };
  });
  if (best && best.shift !== 0 && best.reading.kind === 'names') notes.unshift(shiftNote(best.shift));
  notes.push(...ownNotes(recordings, roots), ...pitchNotes(roots), ...tuningNotes(roots));
  return { roots: inRange(roots), reading: best?.reading, notes };
}

function inRange(roots: readonly (Root | undefined)[]): (Root | undefined)[] {
  return roots.map((root) => (root && root.key >= 0 && root.key <= 127 ? root : undefined));
}

function shiftNote(shift: number): string {
  const octaves = Math.abs(shift) / 12;
  if (!Number.isInteger(octaves))
    return `The names tell notes that lie ${Math.abs(shift)} semitones ${shift < 0 ? 'above' : 'below'} what sounds, as for an instrument that transposes: the pitch is taken.`;
  const middle = 4 - shift / 12;
  return `Middle C is called C${middle} in the names, as the pitches show.`;
}

interface Believed {
  reading: NoteReading;
  /** What has to be added to its keys. */
  shift: number;
}

/** The reading of names that agrees best with the pitches; where no pitch is clear, that which tells the most. */
function believedReading(
  paths: readonly string[],
  pitched: readonly (number | undefined)[],
): Believed | undefined {
  let best: (Believed & { score: number }) | undefined;
  for (const reading of noteReadings(paths)) {
    const judged = judge(reading, pitched);
    if (judged && judged.score > (best?.score ?? 0)) best = { reading, ...judged };
  }
  return best;
}

function judge(
  { kind, keys }: NoteReading,
  pitched: readonly (number | undefined)[],
): { shift: number; score: number } | undefined {
  const told = keys.filter((key) => key !== undefined).length;
  const shifts = new Map<number, number>();
  let both = 0;
  for (const [at, key] of keys.entries()) {
    const pitch = pitched[at];
    if (key === undefined || pitch === undefined) continue;
    both++;
    const shift = Math.round(pitch) - key;
    shifts.set(shift, (shifts.get(shift) ?? 0) + 1);
  }
  if (both === 0) {
    // Numbers alone may count anything; as keys they rise by more than their order does, and begin above the lowest of a piano.
    const isOfKeys =
      kind === 'names' || (Math.min(...keys.map((key) => key ?? 127)) >= 21 && told === keys.length);
    return isOfKeys && new Set(keys).size > 1 ? { shift: 0, score: told / keys.length } : undefined;
  }
  const [shift, count] = [...shifts].sort((a, b) => b[1] - a[1] || Math.abs(a[0]) - Math.abs(b[0]))[0] as [
    number,
    number,
  ];
  const isPlausible = kind === 'names' ? Math.abs(shift) <= 36 : shift % 12 === 0 && Math.abs(shift) <= 24;
  if (!isPlausible || count / both < leastAgreement * (shift % 12 === 0 ? 0.8 : 1.3)) return undefined;
  return { shift, score: (told / keys.length) * (count / both) + (kind === 'names' ? 0.1 : 0) };
}

/** The root keys of the files themselves, where they say something: not where all give the same one. */
function fileRoots(recordings: readonly Recording[]): (number | undefined)[] {
  const keys = recordings.map(({ rootKey }) => rootKey);
  const distinct = new Set(keys.filter((key) => key !== undefined));
  if (distinct.size < 2 && recordings.length > 1) return keys.map(() => undefined);
  return keys;
}

function ownNotes(recordings: readonly Recording[], roots: readonly (Root | undefined)[]): string[] {
  const wrong = recordings.filter(({ rootKey }, at) => {
    const root = roots[at];
    return rootKey !== undefined && root?.from === 'pitch' && root.key !== rootKey;
  });
  if (wrong.length === 0) return [];
  const [first] = wrong;
  return [
    `The root keys in ${wrong.length} of ${recordings.length} files are not what sounds, as in "${first?.path}" (${first?.rootKey}): they are not used.`,
  ];
}

/** Says of how many recordings the pitch alone tells the key. */
function pitchNotes(roots: readonly (Root | undefined)[]): string[] {
  const byPitch = roots.filter((root) => root?.from === 'pitch' && root.noteText === undefined).length;
  if (byPitch === 0) return [];
  return [
    `The ${byPitch === roots.length ? 'names' : `names of ${counted(byPitch, 'recording')}`} tell no notes; the keys are those that they sound.`,
  ];
}

/** Says what is put in tune, and whether all of it is off by about as much. */
function tuningNotes(roots: readonly (Root | undefined)[]): string[] {
  const tuned = roots.flatMap((root) => (root && root.tuneCents !== 0 ? [root.tuneCents] : []));
  if (tuned.length === 0) return [];
  const sorted = [...tuned].sort((a, b) => a - b);
  const [least, most] = [sorted[0] as number, sorted.at(-1) as number];
  if (tuned.length === roots.length && tuned.length > 2 && most - least < leastCents * 2)
    return [
      `All recordings sound about ${Math.round(Math.abs(median(tuned)))} cents too ${most > 0 ? 'low' : 'high'}, perhaps on purpose: tune brings them to A = 440 Hz.`,
    ];
  return [
    `${counted(tuned.length, 'recording is', 'recordings are')} out of tune by ${leastCents} cents or more; tune corrects that.`,
  ];
}
