/** One value of a region, and the cell that it comes from. */
export interface ZoneValue {
  /** Name of the open SFZ format. */
  name: string;
  cell: number;
  /** The value as it is written; the cell's own text where they are the same. */
  text: string;
}

/** A row of a table as a region. */
export interface Zone {
  row: number;
  /** The group's name; empty for none. */
  group: string;
  /** The cell that names the group; −1 for none. */
  groupCell: number;
  values: ZoneValue[];
}

/** A number as a value is written: plain decimal notation with at most six decimals. */
export function decimal(number: number): string {
  const rounded = Math.round(number * 1e6) / 1e6;
  return String(rounded === 0 ? 0 : rounded);
}
