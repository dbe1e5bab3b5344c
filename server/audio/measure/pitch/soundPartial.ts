/** One partial of a sound, near a whole multiple of its fundamental. */
export interface SoundPartial {
  /** Which multiple: 1 is the fundamental. */
  number: number;
  hertz: number;
  /** Its amplitude squared. */
  power: number;
}
