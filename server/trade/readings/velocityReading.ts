import type { Unit } from '../meaning';
import { rangeArrows, rangeWords } from '../rangeWords';
import { limitIn } from './limits';
import { readNumber } from './numberReading';

/** Velocities of a cell as they are written; an end that is left open is `undefined`. */
export interface VelocityReading {
  low: number | undefined;
  high: number | undefined;
  unit: Unit | undefined;
}

const longest = 40;
const range = new RegExp(
  String.raw`^(.*?[\d%])\s*(?:\.{2,3}|\u2026|${rangeArrows}|[-\u2212\u2010-\u2015\u301c~:]|\s${rangeWords}\s)\s*(\S.*)$`,
  'iu',
);

/**
 * Reads one velocity or a range of them, in any scale: `64`, `1-63`, `0.5`, `0–49.6 %`, `<64`, `ab 64`. `undefined` for
 * anything else.
 */
export function readVelocities(text: string): VelocityReading | undefined {
  const word = text.trim();
  if (word === '' || word.length > longest) return undefined;
  const single = readNumber(word);
  if (single)
    return single.number < 0 ? undefined : { low: single.number, high: single.number, unit: single.unit };
  const limit = limitIn(word);
  // `from 1 to 63` has a word before the first of two.
  const both = readEnds(word) ?? (limit?.end === 'least' ? readEnds(limit.value) : undefined);
  if (both) return both;
  const end = limit && readNumber(limit.value);
  if (!end || !(end.number >= 0)) return undefined;
  const isWhole = Number.isInteger(end.number) && end.unit === undefined;
  const step = !limit.excluded || !isWhole ? 0 : limit.end === 'least' ? 1 : -1;
  return limit.end === 'least'
    ? { low: end.number + step, high: undefined, unit: end.unit }
    : { low: undefined, high: end.number + step, unit: end.unit };
}

function readEnds(text: string): VelocityReading | undefined {
  const match = range.exec(text);
  const low = match && readNumber(match[1]);
  const high = match && readNumber(match[2]);
  if (!low || !high || low.number < 0 || high.number < 0) return undefined;
  return { low: low.number, high: high.number, unit: high.unit ?? low.unit };
}

/** Whether a text gives velocities as portions of the loudest: in percent, or as 0..1 with a fraction. */
export function arePortions(text: string): boolean {
  const reading = readVelocities(text);
  if (!reading) return false;
  const ends = [reading.low, reading.high].filter((end) => end !== undefined);
  if (reading.unit === 'percent') return ends.every((end) => end <= 100);
  return (
    reading.unit === undefined && ends.every((end) => end <= 1) && ends.some((end) => !Number.isInteger(end))
  );
}
