import type { Unit } from '../meaning';
import { readNumber } from './numberReading';

/** Frequencies that a sample can be of, in Hz: a little beyond those of the keys 0..127. */
export const keyFrequencies = { least: 8, most: 13_300 } as const;

/** A frequency in Hz; the unit behind the number counts before `unit`, that of its column. `undefined` for other texts. */
export function readFrequency(text: string, unit: Unit | undefined): number | undefined {
  const reading = readNumber(text);
  const own = reading?.unit ?? unit ?? 'Hz';
  if (!reading || (own !== 'Hz' && own !== 'kHz')) return undefined;
  return own === 'kHz' ? reading.number * 1000 : reading.number;
}
