import type { Unit } from '../../trade/meaning';
import { writtenUnit } from '../../trade/phrases/writtenUnit';
import { readNumberText } from './numberText';
import type { ValueSurroundings } from './valueSurroundings';

/** How a number in a vocabulary's form and the number of the open SFZ format follow from one another. */
export interface NumberForm {
  /** The number of the open SFZ format; NaN where the written one makes no sense. */
  read(written: number, around: ValueSurroundings): number;
  /** About the number to be written, from which the shortest one is looked for; NaN where there is none. */
  write(value: number, around: ValueSurroundings): number;
  /** The written number of a text that is more than a number and a unit; `undefined` for other texts. */
  readText?(text: string): number | undefined;
  /** The text of a written number that is more than that. */
  writeText?(number: string): string;
  /** What had to be assumed, as a sentence. */
  assumed?(around: ValueSurroundings): string | undefined;
  /** The written number of the loudest level, where the scale ends there. */
  loudest?: number;
  /** The names of the form's unit and, for other units of its kind, how many of the form's unit one of them is. */
  units: ReadonlyMap<string, number>;
  /** The unit of the value in the open SFZ format. */
  unit: string;
  /** Whether {@link read} goes by more than the number: by the sample or by other parameters. */
  needsSurroundings: boolean;
}

/** Names of units, in small letters. */
export const unitNames = {
  dB: ['db', 'decibel', 'decibels'],
  centibels: ['cb', 'centibel', 'centibels'],
  percent: ['%', 'percent', 'pct'],
  cents: ['cents', 'cent', 'ct', 'c', '¢'],
  semitones: ['semitones', 'semitone', 'st', 'semi', 'ht'],
  frames: ['frames', 'frame', 'samples', 'sample', 'smp', 'smpl'],
  seconds: ['s', 'sec', 'secs', 'second', 'seconds'],
  milliseconds: ['ms', 'msec', 'millisecond', 'milliseconds'],
} as const;

/** Unit names with the factor that each is read with. */
export function unitsOf(
  ...named: (readonly [names: readonly string[], factor: number])[]
): Map<string, number> {
  return new Map(named.flatMap(([names, factor]) => names.map((name) => [name, factor] as const)));
}

/** The number of a text in the form's own unit; NaN where it is none or stands in a unit of another kind. */
export function readNumberForm(form: NumberForm, unitText: string | undefined, text: string): number {
  const special = form.readText?.(text);
  if (special !== undefined) return special;
  const found = readNumberText(text);
  if (!found) return Number.NaN;
  const unit = found.unit.toLowerCase();
  if (unit === '' || unit === unitText?.trim().toLowerCase()) return found.number;
  return found.number * (form.units.get(unit) ?? inWords(form, unit) ?? Number.NaN);
}

/** The factor of a unit that is written in words of any language. */
function inWords({ units }: NumberForm, text: string): number | undefined {
  const unit = units.size === 0 ? undefined : writtenUnit(text);
  return unit === undefined ? undefined : units.get(usualNames[unit] ?? unit.toLowerCase());
}

const usualNames: Readonly<Partial<Record<Unit, string>>> = { percent: '%' };
