import { keyText } from '../model/wording/rangeWords';
import type { NamePart } from './parts';
import type { Recording } from './recording';
import type { Root } from './root';

/** Why a recording has its root key, as a sentence. */
export function rootReason(
  { path, pitch, rootKey }: Recording,
  { key, from, note, tuneCents }: Root,
): string {
  const name =
    note && `"${note.text.trim()}" in its ${note.start > path.lastIndexOf('/') ? 'name' : 'folder'}`;
  switch (from) {
    case 'pitch': {
      const cents = pitch === undefined ? 0 : Math.round((pitch - key) * 100);
      const off = cents === 0 ? '' : `, ${Math.abs(cents)} cents ${cents > 0 ? 'above' : 'below'} it`;
      const tuned = tuneCents === 0 ? '' : '; tune corrects that';
      return `It sounds at ${keyText(key)}${off}${tuned}.`;
    }
    case 'name':
      return `${name ?? 'Its name'} means ${keyText(key)}; no clear pitch contradicts it.`;
    case 'file':
      return `The file itself gives the root key ${rootKey ?? key}.`;
  }
}

/** What words of a path decide, as sentences. */
export function wordReasons({ articulation, microphone, isRelease, side }: NamePart): string[] {
  const reasons = [];
  if (articulation !== undefined) reasons.push(`Its path speaks of ${articulation}.`);
  if (microphone !== undefined) reasons.push(`Its path speaks of the microphone ${microphone}.`);
  if (isRelease) reasons.push('Its path speaks of a release: it sounds when the key goes up.');
  if (side !== undefined) reasons.push(`Its path says ${side}.`);
  return reasons;
}
