/** What is played: what a keyboard sends. */
export type Message =
  | { kind: 'noteOn'; key: number; velocity: number }
  | { kind: 'noteOff'; key: number; velocity: number }
  | { kind: 'controller'; number: number; value: number }
  | { kind: 'bend'; value: number }
  | { kind: 'channelPressure'; value: number }
  | { kind: 'polyPressure'; key: number; value: number }
  | { kind: 'program'; number: number };

/** A message at its time in seconds; those of one part must not go back in time. */
export interface TimedMessage {
  seconds: number;
  message: Message;
}

/** Messages of which the first is at 0; a part begins when all that the part before it plays is over. */
export type Part = readonly TimedMessage[];

/** How one note is played. */
export interface NoteOptions {
  velocity: number;
  /** Seconds from the key's being pressed to its being let go. */
  holdSeconds: number;
}

/** The part that plays one note. */
export function notePart(key: number, { velocity, holdSeconds }: NoteOptions): Part {
  return [
    { seconds: 0, message: { kind: 'noteOn', key, velocity } },
    { seconds: holdSeconds, message: { kind: 'noteOff', key, velocity: 64 } },
  ];
}
