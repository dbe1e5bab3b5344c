/** What MIDI keyboards are reached by, wherever that comes from. */
export interface MidiInputs {
  /** The names of what is connected, in the order of their numbers. */
  names(): string[];
  /** Listens to one by its number; the answer ends that. Fails where it cannot be opened. */
  open(number: number, receive: (bytes: readonly number[]) => void): () => void;
}

/** What came of asking for them. */
export type MidiAccess =
  | { kind: 'inputs'; inputs: MidiInputs }
  /** The package that reaches them is not there: what installs it, as a line for a terminal. */
  | { kind: 'missing'; install: string }
  /** They cannot be reached here; why, as a sentence. */
  | { kind: 'refused'; reason: string };
