import { plainNumber } from '../../model/instrumentBuilder';
import { keyOfNoteName } from '../../model/keys';
import { resolveOpcode } from '../../model/opcodes/resolve';

/** Whether a value means what another one does. */
export function isSameValue(name: string, value: string, there: string | undefined): boolean {
  if (there === value) return true;
  // What nothing says is the default; a loop of which only the end is said starts at 0.
  if (there === undefined) return name === 'loop_start' && numberOf(name, value) === 0;
  const [one, other] = [numberOf(name, value), numberOf(name, there)];
  if (Number.isNaN(one) || Number.isNaN(other))
    return value.toLowerCase() === there.toLowerCase() && isOption(name);
  return Math.abs(one - other) < 1e-9;
}

/** Whether a number is another one but for what a form rounds off, one part in fifty (our choice). */
export function isNearTo(name: string, value: string, there: string): boolean {
  const [one, other] = [numberOf(name, value), numberOf(name, there)];
  return Math.abs(one - other) <= Math.max(0.5, Math.abs(one) / 50);
}

/** By how much a level is off, as a sentence; empty for other values. */
export function offBy(name: string, value: string, there: string): string {
  const decibels = Math.round((numberOf(name, there) - numberOf(name, value)) * 100) / 100;
  if (name !== 'volume' || Number.isNaN(decibels) || decibels === 0) return '';
  return ` That is ${Math.abs(decibels)} dB ${decibels < 0 ? 'quieter' : 'louder'}.`;
}

function isOption(name: string): boolean {
  return resolveOpcode(name)?.facts.kind === 'option';
}

/** A value as a number, a key by its name too; NaN where it is none. */
export function numberOf(name: string, text: string): number {
  const number = plainNumber(text);
  const isKey = Number.isNaN(number) && resolveOpcode(name)?.facts.kind === 'key';
  return isKey ? (keyOfNoteName(text) ?? Number.NaN) : number;
}
