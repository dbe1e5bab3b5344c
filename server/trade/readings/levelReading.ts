import { volumeBounds } from '../bounds';
import type { Unit } from '../meaning';
import type { LevelScale } from '../scales/levelScale';
import { decibelsOf } from '../scales/levelScale';
import { readNumber } from './numberReading';

/** A level in dB, and how it differs from what the table says; or what is wrong with the text. */
export type LevelReading = { decibels: number; how: string | undefined } | { fault: string };

const unitScales: Readonly<Partial<Record<Unit, LevelScale>>> = {
  dB: 'dB',
  centibels: 'centibels',
  percent: 'percent',
  linear: 'factor',
};

/** The scale of levels that a unit stands for; `undefined` for units of other things. */
export function levelScaleOf(unit: Unit | undefined): LevelScale | undefined {
  return unit && unitScales[unit];
}

/** A level above this is a slip of the fingers (our choice). */
const mostMeant = 24;

/**
 * Reads a level; a unit behind the number counts before the scale of its column, of which `parts` make up one. An
 * attenuation counts the other way.
 * Levels beyond the bounds of the format, −144..6 dB, are brought to them.
 */
export function readLevel(text: string, scale: LevelScale, attenuation: boolean, parts = 1): LevelReading {
  const reading = readNumber(text);
  const own = reading?.unit === undefined ? scale : levelScaleOf(reading.unit);
  const number = reading && reading.number / (reading.unit === undefined ? parts : 1);
  const level = number !== undefined && own ? decibelsOf(number, own, attenuation) : Number.NaN;
  if (Number.isNaN(level) || own === undefined) return { fault: 'is not a level in dB' };
  if (level > mostMeant)
    return {
      fault: `is ${Math.round(level)} dB and would be painfully loud, so it is no level that was meant`,
    };
  const decibels = Math.min(volumeBounds.most, Math.max(volumeBounds.least, level));
  if (decibels !== level && level !== Number.NEGATIVE_INFINITY)
    return {
      decibels,
      how: `is beyond the levels that can be written, −144 to 6 dB; it is written as ${decibels} dB`,
    };
  const isSaid = own === 'dB' && decibels === level;
  return { decibels, how: isSaid || decibels === 0 ? undefined : `is written as ${decibels} dB` };
}
