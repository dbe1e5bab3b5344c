import { keyOfFrequency } from '../../model/keys';
import { resolveOpcode } from '../../model/opcodes/resolve';
import { saysNone } from '../../trade/languages/cellWords';
import type { ValueForm } from '../vocabulary';
import type { NumberForm } from './numberForm';
import { toBillionths, toMillionths } from './numberText';
import { centsByUnit, readTuningSum } from './tuningSum';

type Tuning = Extract<ValueForm, { kind: 'tuning' }>;

/**
 * Tuning, in cents for parameters that the open SFZ format counts in cents, else in semitones. A ratio of frequencies is
 * 1200 · log2(ratio) cents, 100 of them to the semitone of equal temperament (A. J. Ellis, 1885; IEC 60050-801).
 */
export function tuningForm(form: Tuning, parameter: string): NumberForm {
  const plain = plainTuning(form, parameter);
  if (!form.measured) return plain;
  const turned = (number: number) => (number === 0 ? 0 : -number);
  return {
    ...plain,
    read: (written, around) => turned(plain.read(written, around)),
    write: (value, around) => plain.write(turned(value), around),
  };
}

function plainTuning({ unit }: Tuning, parameter: string): NumberForm {
  const inCents = resolveOpcode(parameter)?.facts.unit === 'cents';
  const formatCents = inCents ? 1 : 100;
  const common = { unit: inCents ? 'cents' : 'semitones', needsSurroundings: false };
  if (unit === 'ratio') {
    return {
      ...common,
      read: (ratio) => (ratio > 0 ? toMillionths((1200 * Math.log2(ratio)) / formatCents) : Number.NaN),
      write: (value) => 2 ** ((value * formatCents) / 1200),
      units: new Map(),
    };
  }
  if (unit === 'frequency')
    return {
      ...common,
      read: (hertz) => (hertz > 0 ? centsToKey(hertz) / formatCents : Number.NaN),
      write: () => Number.NaN,
      units: new Map(),
    };
  const writtenCents = unit === 'cents' ? 1 : 100;
  const times = writtenCents / formatCents;
  return {
    ...common,
    readText: (text) => {
      const cents = saysNone(text) ? 0 : readTuningSum(text);
      return cents === undefined ? undefined : toBillionths(cents / writtenCents);
    },
    read: times === 1 ? (written) => written : (written) => toBillionths(written * times),
    write: (value) => value / times,
    units: new Map(Object.entries(centsByUnit).map(([unit, cents]) => [unit, cents / writtenCents])),
  };
}

/** What a frequency in Hz lacks to that of the nearest key, in whole cents. */
function centsToKey(hertz: number): number {
  const key = keyOfFrequency(hertz);
  const cents = Math.round((Math.round(key) - key) * 100);
  return cents === 0 ? 0 : cents;
}
