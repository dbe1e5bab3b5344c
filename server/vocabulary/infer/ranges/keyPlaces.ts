import type { Column } from '../values/column';

/** Places by which the keys of all regions are told. */
export interface KeyEnds {
  low: KeyPlace;
  /** The place of the high keys; the same as `low` where both ends stand in one text. */
  high: KeyPlace | undefined;
}

/** A place of keys, the number of each row. */
export interface KeyPlace {
  order: number;
  column: Column;
  keys: readonly (number | undefined)[];
  /** The high keys where its texts are ranges. */
  highs: readonly (number | undefined)[] | undefined;
}
