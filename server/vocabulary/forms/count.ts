import type { ValueForm } from '../vocabulary';
import type { NumberForm } from './numberForm';

type Count = Extract<ValueForm, { kind: 'count' }>;

/** The greatest key and velocity of MIDI 1.0. */
const greatest = 127;

/** Where a count starts whose first key or velocity is not said: at the first one that there is. */
function startOfCount({ from }: Count, first: number): number {
  return first || (from === 'lovel' ? 1 : 0);
}

/** The root key where none is said (public documentation of the open SFZ format, pitch_keycenter). */
const usualRoot = 60;

/** An end of a key range that is so many keys from the root key. */
function distanceForm({ signed }: Count, parameter: string): NumberForm {
  const isBelow = parameter.startsWith('lo');
  const sign = isBelow && !signed ? -1 : 1;
  return {
    read(written, around) {
      if (!Number.isInteger(written)) return Number.NaN;
      const key = (around.frameOf('pitch_keycenter') || usualRoot) + sign * written;
      return Math.max(0, Math.min(greatest, key));
    },
    write(value, around) {
      const distance = sign * (value - (around.frameOf('pitch_keycenter') || usualRoot));
      // An end on the other side of the root key has no place here.
      if (isBelow && signed ? distance > 0 : distance < 0) return Number.NaN;
      return distance === 0 ? 0 : distance;
    },
    units: new Map(),
    unit: '',
    needsSurroundings: true,
  };
}

/** The last one of so many keys or velocities: the first, and that many less one on; or an end so far from the root key. */
export function countForm(form: Count, parameter: string): NumberForm {
  if (form.from === 'pitch_keycenter') return distanceForm(form, parameter);
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
