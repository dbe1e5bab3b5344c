/** What random values are drawn for; each has a stream of its own. */
export const RandomUse = {
  /** `lorand` and `hirand`, one number for all regions of a note. */
  condition: 0,
  /** The controllers that give each note a random value. */
  controller: 11,
  delay: 1,
  offset: 2,
  amplitude: 3,
  pitch: 4,
  filter: 5,
  filter2: 6,
  pan: 7,
  position: 8,
  resonance: 9,
  noise: 10,
} as const;

/** A 32-bit number that depends on every bit of its input: the finalizer of the public-domain hash MurmurHash3. */
function mixed(value: number): number {
  let at = value | 0;
  at = Math.imul(at ^ (at >>> 16), 0x85ebca6b);
  at = Math.imul(at ^ (at >>> 13), 0xc2b2ae35);
  return (at ^ (at >>> 16)) >>> 0;
}

/** The seed of a voice's random values, a whole number of 32 bits, from the player's seed, the number of the note and of the region. */
export function voiceSeed(seed: number, note: number, region: number): number {
  return mixed(mixed(mixed(seed) + Math.imul(note, 0x9e3779b1)) + Math.imul(region + 1, 0x85ebca77));
}

/** A random value from 0 up to, not including, 1: always the same for one seed and use (any whole number). */
export function randomValue(seed: number, use: number): number {
  return mixed(seed + Math.imul(use + 1, 0x9e3779b1)) / 2 ** 32;
}
