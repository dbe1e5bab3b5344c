/** Where a text ends before what it began is complete. */
export interface CutEnd {
  start: number;
  end: number;
  /** Whether a zone stands there, which is left out; else something around the zones is not closed. */
  isZone: boolean;
}
