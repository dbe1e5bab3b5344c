import { pitchDistanceText } from '../../model/wording/pitchDistance';

/** How far a sound lies from where it should, in words; `undefined` for less than half a semitone. */
export function pitchDistance(cents: number): string | undefined {
  if (!(Math.abs(cents) >= 50)) return undefined;
  return `${pitchDistanceText(cents, true)} ${cents > 0 ? 'above' : 'below'}`;
}
