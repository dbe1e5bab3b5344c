/** Within this many cents a distance is called by the whole semitones that it is close to. */
export const closeCents = 30;

/** A distance of half a semitone or more for a message: octaves and semitones by name, anything else in cents. */
export function pitchDistanceText(cents: number): string {
  const away = Math.abs(cents);
  const semitones = Math.round(away / 100);
  if (semitones === 0 || Math.abs(away - 100 * semitones) > closeCents) return `${away.toFixed(0)} cents`;
  if (semitones % 12 === 0) return counted(semitones / 12, 'octave');
  return counted(semitones, 'semitone');
}

function counted(number: number, unit: string): string {
  return number === 1 ? `one ${unit}` : `${number} ${unit}s`;
}
