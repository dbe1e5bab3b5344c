import { median } from '../model/median';
import { nameOf } from '../model/paths';
import { counted } from '../model/wording/counted';
import { keyText } from '../model/wording/rangeWords';
import type { Believed } from './believedNames';
import { keyByName } from './believedNames';
import type { Recording } from './recording';
import type { Root } from './root';
import { leastCents } from './root';

/** What is to be told of the roots of recordings, each as a sentence; `byFiles` where root keys in the files set the octave. */
export function rootNotes(
  recordings: readonly Recording[],
  roots: readonly (Root | undefined)[],
  believed: Believed | undefined,
  byFiles: boolean,
): string[] {
  return [
    ...(believed ? shiftNotes(believed, byFiles ? 'the root keys in the files' : 'the pitches') : []),
    ...nameNotes(recordings, roots, believed),
    ...ownNotes(recordings, roots),
    ...pitchNotes(roots),
    ...tuningNotes(roots),
  ];
}

/** Where names and sounds lie apart as a rule. */
function shiftNotes({ reading: { kind }, shift, folderShifts }: Believed, by: string): string[] {
  const notes = [];
  const octaves = shift / 12;
  if (kind === 'lines')
    notes.push(`Middle C is called c1 in the names, octaves counted by lines, as ${by} show.`);
  else if (shift !== 0 && kind === 'numbers')
    notes.push(
      `The numbers in the names lie ${Math.abs(shift)} ${shift < 0 ? 'above' : 'below'} the MIDI keys, as ${by} show.`,
    );
  else if (shift !== 0 && Number.isInteger(octaves))
    notes.push(`Middle C is called C${4 - octaves} in the names, as ${by} show.`);
  else if (shift !== 0)
    notes.push(
      `The names give notes ${counted(Math.abs(shift), 'semitone')} ${shift < 0 ? 'above' : 'below'} the sound, as for a transposing instrument. The sound is used.`,
    );
  for (const [folder, own] of folderShifts) {
    const apart = Math.abs(own - shift) / 12;
    notes.push(
      `${folder === '' ? 'Outside the folders' : `In "${nameOf(folder)}"`} the sounds lie ${counted(apart, 'octave')} ${own > shift ? 'higher' : 'lower'} than the names elsewhere give, as in a rank of an organ. The sound is used.`,
    );
  }
  return notes;
}

/** Single names that tell another note than what sounds. */
function nameNotes(
  recordings: readonly Recording[],
  roots: readonly (Root | undefined)[],
  believed: Believed | undefined,
): string[] {
  return recordings.flatMap(({ path, pitch }, at) => {
    const root = roots[at];
    const named = keyByName(believed, at, path);
    if (named === undefined || root === undefined || pitch === undefined) return [];
    const sounds = Math.round(pitch);
    if (named === sounds || root.from !== 'pitch') return [];
    return [
      `The name of "${path}" says ${keyText(named)}, but it sounds at ${keyText(sounds)}. The sound is used. Listen to it.`,
    ];
  });
}

function ownNotes(recordings: readonly Recording[], roots: readonly (Root | undefined)[]): string[] {
  const wrong = recordings.filter(({ rootKey }, at) => {
    const root = roots[at];
    return rootKey !== undefined && root?.from === 'pitch' && root.key !== rootKey;
  });
  if (wrong.length === 0) return [];
  const [first] = wrong;
  return [
    `The root keys in ${wrong.length} of ${recordings.length} files do not match the sound, as in "${first?.path}" (${first?.rootKey}), so they are not used.`,
  ];
}

/** Says of how many recordings the pitch alone tells the key. */
function pitchNotes(roots: readonly (Root | undefined)[]): string[] {
  const byPitch = roots.filter((root) => root?.from === 'pitch' && root.note === undefined).length;
  if (byPitch === 0) return [];
  return [
    `The ${byPitch === roots.length ? 'names' : `names of ${counted(byPitch, 'recording')}`} give no notes, so the keys are taken from the sound.`,
  ];
}

/** Says what is put in tune, and whether all of it is off by about as much. */
function tuningNotes(roots: readonly (Root | undefined)[]): string[] {
  const tuned = roots.flatMap((root) => (root && root.tuneCents !== 0 ? [root.tuneCents] : []));
  if (tuned.length === 0) return [];
  const sorted = [...tuned].sort((a, b) => a - b);
  const [least, most] = [sorted[0], sorted[sorted.length - 1]];
  if (tuned.length === roots.length && tuned.length > 2 && most - least < leastCents * 2)
    return [
      `All recordings sound about ${Math.round(Math.abs(median(tuned)))} cents too ${most > 0 ? 'low' : 'high'}, perhaps on purpose. tune brings them to A = 440 Hz.`,
    ];
  return [
    `${counted(tuned.length, 'recording is', 'recordings are')} out of tune by ${leastCents} cents or more; tune corrects that.`,
  ];
}
