import { unitOf } from '../languages/cellWords';
import { unitByStem } from '../languages/unitStems';
import type { Unit } from '../meaning';
import { unitFractionIn } from './unitFractions';

/** Longer texts behind a number are no units. */
const longest = 40;

/** The unit that stands behind a number in words, inflected or as a part of another one: `centów`, `hundredths of a semitone`. */
export function writtenUnit(text: string): Unit | undefined {
  const written = text.trim();
  if (written === '' || written.length > longest) return undefined;
  const whole = unitOf(written) ?? (/\s/.test(written) ? undefined : unitByStem(written));
  if (whole !== undefined) return whole;
  const part = unitFractionIn(written, () => true);
  return part === 'unknown' ? undefined : part;
}
