import type { ValueForm } from '../vocabulary';
import type { NumberForm } from './numberForm';
import { unitNames, unitsOf } from './numberForm';
import type { ValueSurroundings } from './valueSurroundings';

type Position = Extract<ValueForm, { kind: 'position' }>;

/** Frames a second where the sample's own rate is not known: that of the audio CD (IEC 60908). */
const assumedRate = 44100;

/**
 * Places in a sample, in frames counted from 0; an end is the last frame that is played, as in the open SFZ format. A time is
 * rounded to the nearest frame. A length counts frames, so it ends before the frame that lies so far from its start.
 */
export function positionForm(form: Position, parameter: string): NumberForm {
  const { unit, from } = form;
  const isEnd = /(^|_)end$/.test(parameter);
  const last = form.last ?? (from === undefined ? 'included' : 'excluded');
  const behind = isEnd && last === 'excluded' ? 1 : 0;
  const first = unit === 'frames' && from === undefined ? (form.first ?? 0) : 0;
  const framesPer = form.atRate && unit === 'frames' ? framesAtStatedRate : framesPerUnit(form);
  /** `end=-1` keeps a region silent. */
  const least = parameter === 'end' ? -1 : 0;
  const zeroOf = (around: ValueSurroundings) =>
    (from === undefined ? 0 : around.frameOf(from)) - behind - first;
  return {
    read(written, around) {
      if (written < 0 && !(unit === 'frames' && written === -1 && least === -1)) return Number.NaN;
      const frame = Math.round(written * framesPer(around)) + zeroOf(around);
      // A length of nothing ends before it starts, which a check can tell of.
      return frame >= (from === undefined ? least : -1) ? frame + 0 : Number.NaN;
    },
    write(value, around) {
      const written = (value - zeroOf(around)) / framesPer(around);
      return written < 0 && !(unit === 'frames' && written === -1 && least === -1) ? Number.NaN : written;
    },
    ...(form.thousands !== undefined && { readText: thousandsReader(form.thousands) }),
    ...(unit !== 'frames' && { assumed: (around) => assumption(form, around) }),
    units: unitsOf(...unitsFor(unit)),
    unit: 'frames',
    needsSurroundings: unit !== 'frames' || from !== undefined || form.atRate === true,
  };
}

/** Reads whole numbers with a mark between groups of three digits, as in `1.050.000`. */
function thousandsReader(mark: string): (text: string) => number | undefined {
  const marks = mark === ' ' ? ' \u00a0\u202f\u2009' : mark === "'" ? "'\u2019" : mark;
  const grouped = new RegExp(`^\\s*\\d{1,3}(?:[${marks}]\\d{3})+\\s*$`);
  return (text) => (grouped.test(text) ? Number(text.replace(/\D/g, '')) : undefined);
}

/** How many frames of the file one frame at the stated rate is. */
function framesAtStatedRate({ sampleRate, statedRate }: ValueSurroundings): number {
  return sampleRate === undefined || statedRate === undefined ? 1 : sampleRate / statedRate;
}

function framesPerUnit({ unit, rate = assumedRate }: Position): (around: ValueSurroundings) => number {
  switch (unit) {
    case 'frames':
      return () => 1;
    case 'seconds':
      return ({ statedRate = rate, sampleRate = statedRate }) => sampleRate;
    case 'milliseconds':
      return ({ statedRate = rate, sampleRate = statedRate }) => sampleRate / 1000;
    case 'fraction':
      return ({ frames = assumedRate }) => frames;
    case 'percent':
      return ({ frames = assumedRate }) => frames / 100;
  }
}

function assumption({ unit, rate }: Position, around: ValueSurroundings): string | undefined {
  if (unit === 'fraction' || unit === 'percent') {
    return around.frames === undefined
      ? `The length of the sample is not known; ${assumedRate} frames were assumed.`
      : undefined;
  }
  const isKnown = around.sampleRate !== undefined || around.statedRate !== undefined || rate !== undefined;
  return !isKnown ? `The sample rate is not known; ${assumedRate} frames a second were assumed.` : undefined;
}

function unitsFor(unit: Position['unit']): (readonly [readonly string[], number])[] {
  switch (unit) {
    case 'frames':
      return [[unitNames.frames, 1]];
    case 'fraction':
      return [[unitNames.percent, 0.01]];
    case 'percent':
      return [[unitNames.percent, 1]];
    default:
      return timeUnits(unit);
  }
}

/** The names of the units of time with the factor that leads to `unit`. */
export function timeUnits(unit: 'seconds' | 'milliseconds'): (readonly [readonly string[], number])[] {
  return [
    [unitNames.seconds, unit === 'seconds' ? 1 : 1000],
    [unitNames.milliseconds, unit === 'seconds' ? 0.001 : 1],
  ];
}
