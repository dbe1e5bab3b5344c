import { volumeBounds } from './bounds';
import type { Unit } from './meaning';
import { readNumber } from './numberReading';

/** A level in dB, and how it differs from what the table says; or what is wrong with the text. */
export type LevelReading = { decibels: number; how: string | undefined } | { fault: string };

/**
 * Reads a level in dB, or as an amplitude a, in percent of the full one or as a factor, which is 20 · log10(a) dB. An attenuation counts the
 * other way. Levels beyond the bounds of the format, −144..6 dB, are brought to them.
 */
export function readLevel(text: string, columnUnit: Unit | undefined, attenuation: boolean): LevelReading {
  const reading = readNumber(text);
  const unit = reading?.unit ?? columnUnit ?? 'dB';
  if (!reading || (unit !== 'dB' && unit !== 'percent' && unit !== 'linear'))
    return { fault: 'is no level in dB' };
  let { number } = reading;
  let how: string | undefined;
  if (unit !== 'dB') {
    if (number < 0) return { fault: 'is no level in dB' };
    number = Math.round(20 * Math.log10(unit === 'percent' ? number / 100 : number) * 100) / 100;
    if (number !== 0)
      how = `is written as ${number === Number.NEGATIVE_INFINITY ? volumeBounds.least : number} dB`;
  }
  if (attenuation) number = 0 - number;
  const decibels = Math.min(volumeBounds.most, Math.max(volumeBounds.least, number));
  if (decibels !== number)
    how = `is beyond the levels that can be written, −144 to 6 dB; it is written as ${decibels} dB`;
  return { decibels, how };
}
