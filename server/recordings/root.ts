import type { NotePlace } from './noteNames';

/** Deviations below so many cents are left as they are: a tuning that nobody hears (our choice). */
export const leastCents = 5;

/** At which key a recording sounds as it was recorded, and how far it is out of tune. */
export interface Root {
  key: number;
  /** What has to be added, in cents. */
  tuneCents: number;
  /** The part of the path that tells the note. */
  note: NotePlace | undefined;
  /** Where the key comes from. */
  from: 'pitch' | 'name' | 'file';
}
