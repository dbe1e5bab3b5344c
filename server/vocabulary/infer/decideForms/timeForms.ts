import type { Assigned } from '../assign';
import type { FormReading } from './soundForms';
import { unitTextOf } from './unitText';

/** A stretch of time: by its unit, else by the numbers of all times that name no unit, `pool`. */
export function decideTimeForm({ facts, unit }: Assigned, pool: readonly Assigned[]): FormReading {
  const formOf = (one: 'seconds' | 'milliseconds') => ({
    kind: 'time' as const,
    unit: one,
    ...unitTextOf(facts),
  });
  const reading = (time: 'seconds' | 'milliseconds', confidence: number, reason: string): FormReading => {
    const other = time === 'seconds' ? 'milliseconds' : 'seconds';
    return {
      form: formOf(time),
      confidence,
      reason,
      others: [{ label: `in ${other}`, form: formOf(other) }],
    };
  };
  if (facts.unit === 'ms') return reading('milliseconds', 0.98, 'The numbers are followed by a unit.');
  if (facts.unit === 's') return reading('seconds', 0.98, 'The numbers are followed by a unit.');
  if (unit === 'ms') return reading('milliseconds', 0.96, 'The name says milliseconds.');
  if (unit === 's') return reading('seconds', 0.96, 'The name says seconds.');
  let greatest = 0;
  let isFractional = false;
  for (const one of pool) {
    greatest = Math.max(greatest, one.facts.greatest);
    if (one.facts.whole < one.facts.numeric) isFractional = true;
  }
  const said = `The greatest time is ${greatest}`;
  if (greatest > 40) return reading('milliseconds', 0.88, `${said}.`);
  if (greatest === 0) return reading('seconds', 0.6, 'Only 0 occurs.');
  if (isFractional)
    return reading('seconds', greatest <= 15 ? 0.88 : 0.6, `${said}, and there are fractions.`);
  return reading(greatest <= 10 ? 'seconds' : 'milliseconds', 0.55, `${said}.`);
}
