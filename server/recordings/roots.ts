import type { Believed } from './believedNames';
import { believedReading, keyByName } from './believedNames';
import { speaksOfRelease } from './nameText';
import type { Recording } from './recording';
import type { Root } from './root';
import { leastCents } from './root';
import { rootNotes } from './rootNotes';

/** The roots of recordings, by position; `undefined` where nothing tells one. */
export interface Roots {
  roots: (Root | undefined)[];
  /** The reading of the names that is believed. */
  believed: Believed | undefined;
  notes: string[];
}

/**
 * Finds the root key of each recording: the pitch that was measured rules; where none is clear, the note in the file's name, in
 * the octave that the other names and their pitches agree on, or the root key that the file itself gives. The noise of a key that
 * goes up has no pitch that counts where its name tells a note.
 */
export function findRoots(recordings: readonly Recording[]): Roots {
  const own = fileRoots(recordings);
  const struck = recordings.map(({ path, pitch }) => (speaksOfRelease(path) ? undefined : pitch));
  const pitches = struck.some((pitch) => pitch !== undefined) ? struck : recordings.map(({ pitch }) => pitch);
  const known = pitches.some((pitch) => pitch !== undefined) ? pitches : own;
  const believed = believedReading(
    recordings.map(({ path }) => path),
    known,
  );
  const roots = recordings.map((recording, at): Root | undefined => {
    const note = believed?.reading.places[at];
    const named = keyByName(believed, at, recording.path);
    const { pitch } = recording;
    const isNoise = named !== undefined && pitches[at] === undefined && Math.round(pitch ?? named) !== named;
    if (pitch !== undefined && !isNoise) {
      const key = Math.round(pitch);
      const cents = Math.round((key - pitch) * 100);
      return { key, tuneCents: Math.abs(cents) < leastCents ? 0 : cents, note, from: 'pitch' };
    }
    if (named !== undefined) return { key: named, tuneCents: 0, note, from: 'name' };
    const key = own[at];
    return key === undefined ? undefined : { key, tuneCents: 0, note, from: 'file' };
  });
  const notes = rootNotes(recordings, roots, believed, known === own);
  return { roots: inRange(roots), believed, notes };
}

function inRange(roots: readonly (Root | undefined)[]): (Root | undefined)[] {
  return roots.map((root) => (root && root.key >= 0 && root.key <= 127 ? root : undefined));
}

/** The root keys of the files themselves, where they say something: not where all give the same one. */
function fileRoots(recordings: readonly Recording[]): (number | undefined)[] {
  const keys = recordings.map(({ rootKey }) => rootKey);
  const distinct = new Set(keys.filter((key) => key !== undefined));
  if (distinct.size < 2 && recordings.length > 1) return keys.map(() => undefined);
  return keys;
}
