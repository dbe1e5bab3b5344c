import type { ColumnFacts } from '../values/columnFacts';

/** The part of a form that says what stands behind numbers, such as ` dB`; nothing where nothing does. */
export function unitTextOf({ unitText }: ColumnFacts): { unitText?: string } {
  return unitText === undefined ? {} : { unitText };
}
