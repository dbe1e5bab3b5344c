/** The values of a region that gestures change: keys 0..127, velocities 1..127. */
export const arrangedNames = ['lokey', 'hikey', 'lovel', 'hivel', 'pitch_keycenter'] as const;
export type ArrangedName = (typeof arrangedNames)[number];

/** What a region, given by its header, is to have; what is left out stays as it is. */
export interface RegionValues extends Partial<Record<ArrangedName, number>> {
  header: number;
}

/** What a gesture changes. A region stands in one of the lists at most, but a region that gets values can be copied too. */
export interface Arrangement {
  /** New values of regions. */
  values: readonly RegionValues[];
  /** Copies of regions, each to stand behind the region that it is like but for these values. */
  copies: readonly RegionValues[];
  /** Headers of regions that go. */
  removed: readonly number[];
}

/** A gesture that cannot be made, with the reason as a sentence that says what to do. */
export interface GestureRefusal {
  refusal: string;
}

/** An arrangement that changes values alone. */
export function valuesOnly(values: readonly RegionValues[]): Arrangement {
  return { values, copies: [], removed: [] };
}

/** Whether an arrangement changes nothing. */
export function isNothing({ values, copies, removed }: Arrangement): boolean {
  return values.length + copies.length + removed.length === 0;
}
