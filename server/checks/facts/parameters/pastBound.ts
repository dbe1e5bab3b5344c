import type { OpcodeFacts } from '../../../model/opcodes/opcode';

/** Up to here above full level players take a level in practice (common practice); more can hurt (our choice). */
const mostUsualDb = 20;

/** What a value past the greatest documented one can do. */
export interface PastBound {
  /** Whether it is a level so high that it can hurt who listens. */
  mayHurt: boolean;
  /** Whether it is a level that players take in practice. */
  isUsual: boolean;
  /** How far it is above the bound, in words; empty where that says nothing. */
  distance: string;
}

/** Whether an opcode raises the level that `volume` sets, by a controller. */
export function isGainBesideVolume({ pattern }: OpcodeFacts): boolean {
  return /^(?:gain|volume)_/.test(pattern);
}

/** Judges a number above the documented bound by what it does to the level, to which the volume beside it is added, in dB. */
export function pastBound(
  { pattern, unit }: OpcodeFacts,
  value: number,
  bound: number,
  volume: number,
): PastBound {
  const decibels = levelOf(pattern, unit, value);
  const from = levelOf(pattern, unit, bound);
  if (decibels === undefined || from === undefined) return { mayHurt: false, isUsual: false, distance: '' };
  const distance = `${Math.round(10 * (decibels - from)) / 10} dB`;
  // A peak of a filter adds to the level like a gain, and has 40 dB in the documents already.
  const isUsual = decibels <= Math.max(mostUsualDb, from) || (volume < 0 && decibels + volume <= mostUsualDb);
  return { mayHurt: !isUsual, isUsual, distance };
}

/** A value as a level in dB above full; `undefined` where it is none. An amplitude counts by 20 · log10 (IEC 60027-3, from memory). */
function levelOf(pattern: string, unit: string | undefined, value: number): number | undefined {
  if (unit === 'dB' && /volume|gain|resonance/.test(pattern)) return value;
  if (/amplitude/.test(pattern) && unit === '%') return 20 * Math.log10(value / 100);
  return undefined;
}
