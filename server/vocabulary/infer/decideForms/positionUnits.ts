import type { Assigned } from '../assign';
import type { SampleFiles } from '../samples/sampleFiles';
import type { PositionUnit } from './positionPlaces';
import { framesOf, isEnd } from './positionPlaces';

/** All units. */
export const units: readonly PositionUnit[] = ['frames', 'seconds', 'milliseconds', 'fraction', 'percent'];
/** The units in words. */
export const unitLabels: Readonly<Record<PositionUnit, string>> = {
  frames: 'frames',
  seconds: 'seconds',
  milliseconds: 'milliseconds',
  fraction: 'a fraction of the sample',
  percent: 'percent of the sample',
};
const nameUnits: Readonly<Record<string, PositionUnit>> = {
  frames: 'frames',
  s: 'seconds',
  ms: 'milliseconds',
  percent: 'percent',
  ratio: 'fraction',
};
/** What the values of a place are counted in, and why. */
export interface UnitReading {
  unit: PositionUnit;
  confidence: number;
  reason: string;
}

/** Works out what the values of a place are counted in. */
export function positionUnit(assigned: Assigned, files: SampleFiles): UnitReading {
  const { facts, unit } = assigned;
  const written = facts.unit && nameUnits[facts.unit];
  if (written)
    return {
      unit: written,
      confidence: 0.98,
      reason: `The numbers are followed by "${facts.unitText?.trim()}".`,
    };
  const named = unit && nameUnits[unit];
  if (named && fitsUnit(assigned, named, files)) {
    return { unit: named, confidence: 0.95, reason: `The name says ${unitLabels[named]}.` };
  }
  const fitting = units.filter((one) => fitsUnit(assigned, one, files));
  const byLoop = unitByLoops(assigned, fitting, files);
  if (byLoop) return byLoop;
  const isKnown = files.facts.some((one, row) => one && !Number.isNaN(assigned.facts.numbers[row]));
  if (fitting.length === 1 && isKnown) {
    return {
      unit: fitting[0],
      confidence: 0.92,
      reason: 'In any other unit some would lie past the end of their sample.',
    };
  }
  const { greatest } = facts;
  const isFractional = facts.whole < facts.numeric;
  const said = `The greatest is ${greatest}`;
  if (greatest <= 0) return { unit: 'frames', confidence: 0.5, reason: 'Only 0 occurs.' };
  if (!isFractional) {
    if (greatest > 2000)
      return { unit: 'frames', confidence: 0.92, reason: `${said}, and all are whole numbers.` };
    return { unit: 'frames', confidence: 0.65, reason: `${said}, and all are whole numbers.` };
  }
  const reaches1 = greatest === 1 && isEnd(assigned);
  if (greatest <= 1 && fitting.includes('fraction')) {
    return {
      unit: 'fraction',
      confidence: reaches1 ? 0.85 : fitting.includes('seconds') ? 0.6 : 0.85,
      reason: `All lie from ${facts.least} to ${greatest}.`,
    };
  }
  if (greatest < 60 && fitting.includes('seconds')) {
    return { unit: 'seconds', confidence: 0.85, reason: `${said}, with fractions.` };
  }
  if (fitting.includes('milliseconds'))
    return { unit: 'milliseconds', confidence: 0.8, reason: `${said}, with fractions.` };
  return { unit: fitting[0] ?? 'frames', confidence: 0.4, reason: `${said}.` };
}

const timeWords = /^(?:time|times|zeit|temps|tiempo|tempo|moment)$/;
/** The least frame that the greatest of several positions is likely to reach. */
const leastReach = 8;
/** Frames a second where no file tells. */
const usualRate = 44_100;

/** Whether no value is impossible in a unit, nor all of them too small to be heard. */
export function fitsUnit({ facts, column }: Assigned, unit: PositionUnit, files: SampleFiles): boolean {
  if (unit !== 'seconds' && unit !== 'milliseconds' && column.own.some((word) => timeWords.test(word)))
    return false;
  if (unit === 'milliseconds' && facts.greatest > 0 && (facts.greatest * usualRate) / 1000 < leastReach)
    return false;
  if (unit === 'frames' && facts.whole < facts.numeric) return false;
  if (unit === 'fraction' && facts.greatest > 1) return false;
  if (unit === 'percent' && facts.greatest > 100) return false;
  for (const [row, known] of files.facts.entries()) {
    const value = facts.numbers[row];
    if (!known || known.frames === 0 || Number.isNaN(value)) continue;
    if (framesOf(value, unit, known) > known.frames + 1) return false;
  }
  return true;
}

/** The unit in which most loops are those of their files. */
function unitByLoops(
  assigned: Assigned,
  fitting: readonly PositionUnit[],
  files: SampleFiles,
): UnitReading | undefined {
  if (!['loop_start', 'loop_end', 'loop_length'].includes(assigned.target)) return undefined;
  let best: { unit: PositionUnit; hits: number; rows: number } | undefined;
  for (const unit of fitting) {
    let hits = 0;
    let rows = 0;
    for (const [row, known] of files.facts.entries()) {
      const value = assigned.facts.numbers[row];
      const loop = known?.loops[0];
      if (!known || !loop || Number.isNaN(value)) continue;
      const wanted =
        assigned.target === 'loop_start'
          ? loop.start
          : assigned.target === 'loop_end'
            ? loop.end
            : loop.end - loop.start + 1;
      rows++;
      if (wanted > 4 && Math.abs(framesOf(value, unit, known) - wanted) <= 1.51) hits++;
    }
    if (rows > 0 && hits * 2 > rows && (!best || hits > best.hits)) best = { unit, hits, rows };
  }
  return (
    best && {
      unit: best.unit,
      confidence: 0.95,
      reason: `That way ${best.hits} of ${best.rows} loops are those of their sample files.`,
    }
  );
}
