import type { ValueForm } from '../vocabulary';
import type { NumberForm } from './numberForm';

/** The greatest velocity of MIDI 1.0. */
const greatest = 127;

/**
 * Velocities, scaled to 0..127 and rounded. What lies half way belongs to the upper of two layers: a low end is rounded up
 * and a high end down, so that layers that share the text of a bound half way meet without a gap or an overlap. Where layers
 * share their bounds throughout (`touching`), a low end is the first velocity at or above its text, and a high end the last
 * one below; where steps are counted `fromOne`, a low end begins right above the step before; with a `step` it is the one below where the text with that step added, the low end of the next layer, is rounded to.
 */
export function velocityForm(
  { most, touching, fromOne, step }: Extract<ValueForm, { kind: 'velocity' }>,
  parameter: string,
): NumberForm {
  const isHighEnd = /hivel/.test(parameter);
  const scale = greatest / most;
  /** What binary arithmetic adds to or takes from a whole number. */
  const slack = 1e-9;
  const above = isHighEnd ? (step ?? 0) : 0;
  const isBound = touching === true || step !== undefined;
  const bound = (number: number) =>
    step === undefined ? Math.ceil(number - slack) : Math.floor(number + 0.5 + slack);
  const readBound = (written: number) => {
    const first = bound((written + above) * scale);
    return isHighEnd && written < most
      ? Math.min(greatest, Math.max(0, first - 1))
      : Math.min(greatest, first);
  };
  const readRounded = (written: number) =>
    isHighEnd ? Math.ceil(written * scale - 0.5 - slack) : Math.floor(written * scale + 0.5 + slack);
  const readCounted = (written: number) =>
    isHighEnd || written === 0
      ? Math.floor(written * scale + 0.5 + slack)
      : Math.floor((written - 1) * scale + 0.5 + slack) + 1;
  const read = fromOne ? readCounted : isBound ? readBound : readRounded;
  return {
    read: (written) => (written >= 0 && written <= most ? Math.abs(read(written)) : Number.NaN),
    write(value) {
      if (value < 0 || value > greatest) return Number.NaN;
      if (isHighEnd && value === greatest) return most;
      if (fromOne) return isHighEnd || value === 0 ? value / scale : (value - 1) / scale + 1;
      if (!isBound || (value === 0 && !isHighEnd)) return value / scale;
      if (step !== undefined) return Math.max(0, (isHighEnd ? value + 1 : value) / scale - above);
      return Math.max(0, (isHighEnd ? value + 0.5 : value - 0.5) / scale - above);
    },
    units: new Map(most === 100 ? [['%', 1]] : most === 1 ? [['%', 0.01]] : []),
    unit: '',
    needsSurroundings: false,
  };
}
