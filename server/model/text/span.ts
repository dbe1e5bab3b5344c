/** A stretch of text: `source` is the position of the file in `Instrument.sources`, `start` and `end` are UTF-16 offsets. */
export interface Span {
  source: number;
  start: number;
  end: number;
}
