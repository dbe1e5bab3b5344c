import type { Numbers, ScaleReading } from './numbers';
import type { VelocityShares } from './velocityShares';

const midi = 127;
/** Nobody parts velocities of MIDI into layers that all end below this (our choice). */
const mostSteps = 20;
/** Greatest numbers that people count to. */
const roundTops: ReadonlySet<number> = new Set([50, 99]);

/** Low and high ends of velocity layers. */
export interface VelocityEnds {
  all: Numbers;
  /** Whether some layer starts where another one ends, or right behind. */
  areLayered: boolean;
  inPercent: boolean;
  /** How the layers share out the velocities up to the greatest, where they do. */
  shares?: VelocityShares | undefined;
}

/**
 * Decides how velocities are counted, from all ends of layers together: the greatest velocity of the scale, 127 as in MIDI 1.0
 * where nothing says otherwise.
 */
export function velocityScale({ all, areLayered, inPercent, shares }: VelocityEnds): ScaleReading<number> {
  const { least, greatest } = all;
  const isFractional = all.whole < all.numeric;
  const reading = (scale: number, confidence: number, reason: string, others: number[]) => ({
    scale,
    isOpen: scale !== midi || confidence <= 0.75,
    confidence,
    reason,
    others,
  });
  if (inPercent) return reading(100, 0.95, 'They are percentages.', [midi, 1]);
  if (greatest <= 1) {
    if (isFractional) return reading(1, 0.97, 'All of them lie from 0 to 1.', [midi]);
    const both = greatest === 1 && least === 0;
    const reason = 'Only 0 and 1 occur, which could also be the lowest of 127.';
    return reading(1, both ? 0.7 : 0.5, reason, [midi, 100]);
  }
  const said = `The greatest is ${greatest}`;
  if (greatest > 128) return reading(greatest <= 255 ? 255 : 256, 0.8, `${said}.`, [midi]);
  if (greatest === 128) return reading(128, 0.8, `${said}.`, [midi]);
  if (greatest > 100) return reading(midi, 0.97, `${said}.`, [100]);
  if (shares && (greatest < 100 || (least > 0 && shares === 'evenly'))) {
    const isScale =
      greatest <= mostSteps || roundTops.has(greatest) || (shares === 'evenly' && !isPartOfMidi(greatest));
    const reason = `Layers share out the numbers from ${least} to ${greatest}, and none reaches further.`;
    return isScale
      ? reading(greatest, greatest <= mostSteps ? 0.85 : 0.75, reason, [midi])
      : reading(midi, 0.6, `${reason} MIDI counts velocities up to 127.`, [greatest]);
  }
  if (greatest === 100) return ofHundred(least, isFractional, areLayered, reading);
  return reading(midi, isFractional ? 0.6 : 0.8, `${said}, and MIDI counts velocities up to 127.`, [100]);
}

/** Whether velocities up to a number are a half or quarters of those of MIDI, so that the layers above may be missing. */
function isPartOfMidi(greatest: number): boolean {
  return greatest % 32 === 0 || (greatest + 1) % 32 === 0;
}

function ofHundred(
  least: number,
  isFractional: boolean,
  areLayered: boolean,
  reading: (scale: number, confidence: number, reason: string, others: number[]) => ScaleReading<number>,
): ScaleReading<number> {
  if (isFractional) return reading(100, 0.85, 'The greatest is 100, and there are fractions.', [midi]);
  if (least === 0) {
    const reason = `They run from 0 to 100${areLayered ? ' in layers' : ''}, which could be percentages or the lower part of 127.`;
    return reading(areLayered ? 100 : midi, 0.7, reason, [areLayered ? midi : 100]);
  }
  const reason = `They lie from ${least} to 100, and MIDI counts velocities up to 127.`;
  return reading(midi, 0.75, reason, [100]);
}
