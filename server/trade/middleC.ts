import type { MiddleC } from '../model/keys';

/** The ways to count octaves, the most usual first. */
export const conventions: readonly MiddleC[] = ['C4', 'C3', 'C5'];

/** Keys to add to a note name that was read with middle C = C4, by the convention it was written in. */
export const octaveShifts: Readonly<Record<MiddleC, number>> = { C3: 12, C4: 0, C5: -12 };
