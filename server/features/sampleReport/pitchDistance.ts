/** Distances this close to whole semitones are called by them, in cents. */
const closeCents = 30;

/**
 * How far a sound lies from where it should, in words: octaves and semitones by name where it is within 30 cents of
 * them, anything else in cents. `undefined` for less than half a semitone.
 */
export function pitchDistance(cents: number): string | undefined {
  const away = Math.abs(cents);
  if (!(away >= 50)) return undefined;
  const side = cents > 0 ? 'above' : 'below';
  const semitones = Math.round(away / 100);
  if (Math.abs(away - 100 * semitones) > closeCents) return `${away.toFixed(0)} cents ${side}`;
  const octaves = semitones / 12;
  if (octaves === 1) return `an octave ${side}`;
  if (Number.isInteger(octaves)) return `${octaves} octaves ${side}`;
  return semitones === 1 ? `a semitone ${side}` : `${semitones} semitones ${side}`;
}
