import type { TimedMessage } from '../../playing/player/playMessage';

/** Messages of which the first is at 0 and none goes back in time; a part begins when all that the part before it plays is over. */
export type MessagePart = readonly TimedMessage[];

/** How one note is played. */
export interface NoteOptions {
  velocity: number;
  /** Seconds from the key's being pressed to its being let go. */
  holdSeconds: number;
}

/** The part that plays one note. */
export function notePart(key: number, { velocity, holdSeconds }: NoteOptions): MessagePart {
  return [
    { seconds: 0, message: { kind: 'noteOn', key, velocity } },
    { seconds: holdSeconds, message: { kind: 'noteOff', key, velocity: 64 } },
  ];
}
