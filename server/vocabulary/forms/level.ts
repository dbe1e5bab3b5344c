import { resolveOpcode } from '../../model/opcodes/resolve';
import { fullLevels } from '../../trade/scales/levelScale';
import type { ValueForm } from '../vocabulary';
import type { NumberForm } from './numberForm';
import { unitNames, unitsOf } from './numberForm';
import { toBillionths, toMillionths } from './numberText';

/** The least level that the open SFZ format documents for `volume`; it stands for silence. */
const silenceDb = -144;

/** No level at all, as a logarithm says it; an attenuation says it without the sign. */
const silence = /^\s*[-−+]?\s*(?:inf(?:inity)?|∞)\s*(?:dB|cB)?\s*$/i;

type Level = Extract<ValueForm, { kind: 'level' }>;

/**
 * Levels. A factor, percentage or other share of the amplitude is 20 · log10(factor) dB (IEC 60027-3: levels of field quantities), 0 the
 * least level that the format documents. A centibel is a tenth of a dB, as attenuations of the SoundFont format are counted
 * (SoundFont 2.04, 8.1.3: initialAttenuation). An attenuation in dB counts down from 0, one as a share is what is missing to 1.
 * Parameters that the format counts in percent, such as `amplitude`, are given in percent.
 */
export function levelForm(form: Level, parameter: string): NumberForm {
  const inPercent = resolveOpcode(parameter)?.facts.unit === '%';
  const toFormat = inPercent ? percentOf(form.unit) : decibelsOf(form.unit);
  const fromFormat = inPercent ? fromPercent(form.unit) : fromDecibels(form.unit);
  const flip = attenuated(form);
  const loudest = loudestOf(form);
  const within = (level: number) =>
    loudest === undefined ? level : form.attenuation ? Math.max(loudest, level) : Math.min(loudest, level);
  return {
    read: (written) => toFormat(flip(written)),
    write: (value) => within(flip(fromFormat(value))),
    ...(loudest !== undefined && { loudest }),
    ...(isLogarithmic(form.unit) && {
      readText: (text) => (silence.test(text) ? flip(silenceDb * perDecibel(form.unit)) : undefined),
    }),
    units: unitsOf(...unitsFor(form.unit)),
    unit: inPercent ? '%' : 'dB',
    needsSurroundings: false,
  };
}

/** The number of the loudest level where the scale ends: no share lies above its top, and nothing that is missing below 0. */
function loudestOf({ unit, attenuation, most }: Level): number | undefined {
  if (isLogarithmic(unit)) return attenuation && most !== undefined ? 0 : most;
  if (attenuation) return 0;
  return most ?? (unit === 'sevenBits' || unit === 'eightBits' ? fullLevels[unit] : undefined);
}

function isLogarithmic(unit: Level['unit']): unit is 'dB' | 'centibels' {
  return unit === 'dB' || unit === 'centibels';
}

/** How many of a logarithmic unit are one dB. */
function perDecibel(unit: Level['unit']): number {
  return unit === 'centibels' ? 10 : 1;
}

function unitsFor(unit: Level['unit']): (readonly [readonly string[], number])[] {
  switch (unit) {
    case 'dB':
      return [
        [unitNames.dB, 1],
        [unitNames.centibels, 0.1],
      ];
    case 'centibels':
      return [
        [unitNames.centibels, 1],
        [unitNames.dB, 10],
      ];
    case 'percent':
      return [[unitNames.percent, 1]];
    case 'factor':
    case 'sevenBits':
    case 'eightBits':
      return [[unitNames.percent, fullLevels[unit] / 100]];
  }
}

function attenuated({ unit, attenuation }: Level): (level: number) => number {
  if (attenuation !== true) return (level) => level;
  if (isLogarithmic(unit)) return (level) => 0 - level;
  const whole = fullLevels[unit];
  return (level) => whole - level;
}

function decibelsOf(unit: Level['unit']): (level: number) => number {
  if (unit === 'dB') return (level) => level;
  if (unit === 'centibels') return (level) => toBillionths(level / 10);
  const whole = fullLevels[unit];
  return (level) => {
    if (level < 0) return Number.NaN;
    return Math.max(silenceDb, toMillionths(20 * Math.log10(level / whole)));
  };
}

function fromDecibels(unit: Level['unit']): (decibels: number) => number {
  if (unit === 'dB') return (decibels) => decibels;
  if (unit === 'centibels') return (decibels) => decibels * 10;
  const whole = fullLevels[unit];
  return (decibels) => (decibels <= silenceDb ? 0 : whole * 10 ** (decibels / 20));
}

function percentOf(unit: Level['unit']): (level: number) => number {
  if (isLogarithmic(unit)) {
    const times = perDecibel(unit);
    return (level) => (level <= silenceDb * times ? 0 : toMillionths(100 * 10 ** (level / times / 20)));
  }
  const times = 100 / fullLevels[unit];
  return (level) => (level < 0 ? Number.NaN : toBillionths(level * times));
}

function fromPercent(unit: Level['unit']): (percent: number) => number {
  if (isLogarithmic(unit)) {
    const times = perDecibel(unit);
    return (percent) =>
      percent < 0
        ? Number.NaN
        : percent === 0
          ? silenceDb * times
          : Math.max(silenceDb, 20 * Math.log10(percent / 100)) * times;
  }
  const times = fullLevels[unit] / 100;
  return (percent) => (percent < 0 ? Number.NaN : percent * times);
}
