import { choice } from '../choices';
import type { FilterValues } from './stateVariableFilter';

/** The filters of the format that are computed, and the types of its equaliser bands. */
export const filterTypes = [
  'lpf_1p',
  'hpf_1p',
  'apf_1p',
  'lpf_2p',
  'hpf_2p',
  'bpf_2p',
  'brf_2p',
  'lpf_2p_sv',
  'hpf_2p_sv',
  'bpf_2p_sv',
  'brf_2p_sv',
  'lpf_4p',
  'hpf_4p',
  'lpf_6p',
  'hpf_6p',
  'lsh',
  'hsh',
  'peq',
] as const;

export type FilterType = (typeof filterTypes)[number];

export const bandTypes = ['peak', 'lshelf', 'hshelf'] as const;

export type BandType = (typeof bandTypes)[number];

/** Damping 1/Q of the stages of Butterworth filters of order 4 and 6: 2·cos of the angles of their poles. */
const fourPoles = [1.8477590650225735, 0.7653668647301796];
const sixPoles = [1.9318516525781366, Math.SQRT2, 0.5176380902050415];

/** Types that take several filters of second order, with the damping of each. */
const dampings: Readonly<Partial<Record<FilterType, readonly number[]>>> = {
  lpf_4p: fourPoles,
  hpf_4p: fourPoles,
  lpf_6p: sixPoles,
  hpf_6p: sixPoles,
};

/** How many filters of second order a type takes. */
export function stagesOf(type: FilterType): number {
  return dampings[type]?.length ?? 1;
}

/** Keeps a frequency where filters are what they are named. */
function clampedHertz(hertz: number, sampleRate: number): number {
  const highest = choice.highestCutoffShare.value * sampleRate;
  return Math.min(highest, Math.max(choice.lowestCutoffHz.value, hertz));
}

function prewarped(hertz: number, sampleRate: number): number {
  return Math.tan((Math.PI * clampedHertz(hertz, sampleRate)) / sampleRate);
}

function set(into: FilterValues, g: number, k: number, input: number, band: number, low: number): void {
  into.g = g;
  into.k = k;
  into.input = input;
  into.band = band;
  into.low = low;
}

/**
 * Works out one stage of a filter: `hertz` is the cutoff, `resonanceDb` and `gainDb` as in the format. The responses of second
 * order are those of W3C Web Audio, BiquadFilterNode, with Q = resonance − 3.01 dB for low and high pass.
 */
export function filterValues(
  type: FilterType,
  stage: number,
  hertz: number,
  resonanceDb: number,
  gainDb: number,
  sampleRate: number,
  into: FilterValues,
): void {
  const g = prewarped(hertz, sampleRate);
  switch (type) {
    case 'lpf_1p':
      set(into, g, 2, 0, 1, 1);
      break;
    case 'hpf_1p':
      set(into, g, 2, 1, -1, -1);
      break;
    case 'apf_1p':
      set(into, g, 2, -1, 2, 2);
      break;
    case 'bpf_2p':
    case 'bpf_2p_sv':
      set(into, g, 1 / qualityOf(resonanceDb), 0, 1 / qualityOf(resonanceDb), 0);
      break;
    case 'brf_2p':
    case 'brf_2p_sv':
      set(into, g, 1 / qualityOf(resonanceDb), 1, -1 / qualityOf(resonanceDb), 0);
      break;
    case 'lsh':
      shelf('low', g, gainDb, into);
      break;
    case 'hsh':
      shelf('high', g, gainDb, into);
      break;
    case 'peq':
      peak(g, qualityOf(resonanceDb), gainDb, into);
      break;
    default: {
      const k = damping(type, stage, resonanceDb);
      if (type.startsWith('l')) set(into, g, k, 0, 0, 1);
      else set(into, g, k, 1, -k, -1);
    }
  }
}

function qualityOf(resonanceDb: number): number {
  return 10 ** (resonanceDb / 20);
}

function damping(type: FilterType, stage: number, resonanceDb: number): number {
  const stages = dampings[type];
  if (!stages) return 10 ** (-(resonanceDb + choice.flatResonanceDb.value) / 20);
  return stages[stage] * (stage === stages.length - 1 ? 10 ** (-resonanceDb / 20) : 1);
}

/** A band of the equaliser: `bandwidth` in octaves between the points of half its gain in dB; shelves have slope 1. */
export function bandValues(
  type: BandType,
  hertz: number,
  bandwidth: number,
  gainDb: number,
  sampleRate: number,
  into: FilterValues,
): void {
  const g = prewarped(hertz, sampleRate);
  if (type === 'peak') {
    // W3C Web Audio and the cookbook that it follows: 1/Q = 2·sinh(ln 2 / 2 · bandwidth · w / sin w).
    const w = (2 * Math.PI * clampedHertz(hertz, sampleRate)) / sampleRate;
    const octaves = Math.max(0.001, bandwidth);
    peak(g, 1 / (2 * Math.sinh((Math.LN2 / 2) * octaves * (w / Math.sin(w)))), gainDb, into);
  } else shelf(type === 'lshelf' ? 'low' : 'high', g, gainDb, into);
}

function peak(g: number, quality: number, gainDb: number, into: FilterValues): void {
  const root = 10 ** (gainDb / 40);
  const k = 1 / (quality * root);
  set(into, g, k, 1, k * (root * root - 1), 0);
}

function shelf(side: 'low' | 'high', g: number, gainDb: number, into: FilterValues): void {
  const root = 10 ** (gainDb / 40);
  const k = Math.SQRT2;
  if (side === 'low') set(into, g / Math.sqrt(root), k, 1, k * (root - 1), root * root - 1);
  else set(into, g * Math.sqrt(root), k, root * root, k * (1 - root) * root, 1 - root * root);
}
