import type { MiddleC } from '../model/keys';

/** Keys to add to a note name that was read with middle C = C4, by the convention it was written in. */
export const octaveShifts: Readonly<Record<MiddleC, number>> = { C3: 12, C4: 0, C5: -12 };

/** All of them. */
export const conventions = Object.keys(octaveShifts) as MiddleC[];
