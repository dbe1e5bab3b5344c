import type { ValueForm } from '../vocabulary';
import type { NumberForm } from './numberForm';

type Count = Extract<ValueForm, { kind: 'count' }>;

/** The greatest key and velocity of MIDI 1.0. */
const greatest = 127;

/** Where a count starts whose first key or velocity is not said: at the first one that there is. */
function startOfCount({ from }: Count, first: number): number {
  return first || (from === 'lovel' ? 1 : 0);
}

/** The last one of so many keys or velocities: the first, and that many less one on. */
export function countForm(form: Count): NumberForm {
  return {
    read(written, around) {
      if (!Number.isInteger(written) || written < 1) return Number.NaN;
      return Math.min(greatest, startOfCount(form, around.frameOf(form.from)) + written - 1);
    },
    write: (value, around) => {
      const count = value - startOfCount(form, around.frameOf(form.from)) + 1;
      return count < 1 ? Number.NaN : count;
    },
    units: new Map(),
    unit: '',
    needsSurroundings: true,
  };
}
