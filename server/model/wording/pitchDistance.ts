/** Within this many cents a distance is called by the whole semitones that it is close to. */
export const closeCents = 30;

/**
 * A distance of half a semitone or more in words: octaves and semitones by name, anything else in cents. A single one is
 * called `one octave`, or, with `articles`, `an octave`.
 */
export function pitchDistanceText(cents: number, articles = false): string {
  const away = Math.abs(cents);
  const semitones = Math.round(away / 100);
  if (semitones === 0 || Math.abs(away - 100 * semitones) > closeCents) return `${away.toFixed(0)} cents`;
  if (semitones % 12 > 0) return counted(semitones, articles ? 'a' : 'one', 'semitone');
  return counted(semitones / 12, articles ? 'an' : 'one', 'octave');
}

function counted(number: number, one: string, unit: string): string {
  return number === 1 ? `${one} ${unit}` : `${number} ${unit}s`;
}
