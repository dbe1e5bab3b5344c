import type { ValueForm } from '../vocabulary';
import type { NumberForm } from './numberForm';
import { unitsOf } from './numberForm';
import { toBillionths } from './numberText';
import { timeUnits } from './position';

/** Stretches of time, in seconds as the open SFZ format has them. */
export function timeForm({ unit }: Extract<ValueForm, { kind: 'time' }>): NumberForm {
  const times = unit === 'seconds' ? 1 : 1000;
  return {
    read: (written) => toBillionths(written / times),
    write: (value) => value * times,
    units: unitsOf(...timeUnits(unit)),
    unit: 's',
    needsSurroundings: false,
  };
}

/** Numbers that are written as the open SFZ format has them, or less something and multiplied by something. */
export function plainForm({ times = 1, plus = 0, none }: Extract<ValueForm, { kind: 'number' }>): NumberForm {
  return {
    read: times === 1 ? (written) => written + plus : (written) => toBillionths(written / times) + plus,
    write: (value) => ((value - plus) * times === none ? Number.NaN : (value - plus) * times),
    units: new Map(),
    unit: '',
    needsSurroundings: false,
  };
}
