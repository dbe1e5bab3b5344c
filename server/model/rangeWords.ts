import { noteNameOf } from './keys';

/** A key for a message: `60 (C4)`. */
export function keyText(key: number): string {
  return `${key} (${noteNameOf(key)})`;
}

/** Keys for a message: `key 60 (C4)` or `keys 60 (C4) to 64 (E4)`. */
export function keysText(low: number, high: number): string {
  return low === high ? `key ${keyText(low)}` : `keys ${keyText(low)} to ${keyText(high)}`;
}

/** Velocities for a message: `velocity 64` or `velocities 64 to 80`. */
export function velocitiesText(low: number, high: number): string {
  return low === high ? `velocity ${low}` : `velocities ${low} to ${high}`;
}
