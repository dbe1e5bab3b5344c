/** A part of a text by its UTF-16 offsets; `end` is one past the last. */
export interface Stretch {
  start: number;
  end: number;
}
