import type { ValueForm } from '../vocabulary';
import type { NumberForm } from './numberForm';
import { unitNames, unitsOf } from './numberForm';
import { toMillionths } from './numberText';

/** Pan positions: linear from left (−100 in the open SFZ format) to the centre (0) and from there to right (100). */
export function panForm({ left, centre, right }: Extract<ValueForm, { kind: 'pan' }>): NumberForm {
  const sign = right >= left ? 1 : -1;
  return {
    read(written) {
      const beyond = (written - centre) * sign;
      const side = Math.abs((beyond < 0 ? left : right) - centre);
      if (beyond === 0) return 0;
      const share = beyond / side;
      return Math.abs(share) <= 1 ? toMillionths(share * 100) : Number.NaN;
    },
    write(value) {
      if (Math.abs(value) > 100) return Number.NaN;
      return centre + ((value < 0 ? centre - left : right - centre) * value) / 100;
    },
    units: unitsOf([unitNames.percent, 1]),
    unit: '%',
    needsSurroundings: false,
  };
}
