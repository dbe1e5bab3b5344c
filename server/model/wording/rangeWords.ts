import { noteNameOf } from '../keys';

/** A key for a message: `60 (C4)`. */
export function keyText(key: number): string {
  return `${key} (${noteNameOf(key)})`;
}

/** Keys for a message: `key 60 (C4)` or `keys 60 (C4) to 64 (E4)`. */
export function keysText(low: number, high: number): string {
  return low === high ? `key ${keyText(low)}` : `keys ${keyText(low)} to ${keyText(high)}`;
}

/** Keys by note names alone, where there is little room: `C4 to E4`, or `C4`. */
export function noteNamesText(low: number, high: number): string {
  return low === high ? noteNameOf(low) : `${noteNameOf(low)} to ${noteNameOf(high)}`;
}

/** Velocities where there is little room: `velocity 1 to 63`, or `velocity 64`. */
export function velocityText(low: number, high: number): string {
  return low === high ? `velocity ${low}` : `velocity ${low} to ${high}`;
}

/** Velocities for a message: `velocity 64` or `velocities 64 to 80`. */
export function velocitiesText(low: number, high: number): string {
  return low === high ? `velocity ${low}` : `velocities ${low} to ${high}`;
}
