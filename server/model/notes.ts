import type { Span } from './text/span';

/** What happened to a value on its way into another notation. */
export type NoteKind = 'assumed' | 'approximated' | 'dropped' | 'ignored';

/** One thing that a conversion did not carry over exactly, or had to decide, tied to the text that it comes from. */
export interface ConversionNote extends Span {
  kind: NoteKind;
  message: string;
  /** Where it shows in the text that was written: the value as it is there, else what stands around. */
  written?: { start: number; end: number };
}
