import { keyOfNoteName } from '../keys';
import type { OpcodeFacts } from './opcode';

/** What is wrong with a value: its kind, or the documented bound that it goes past. */
export type ValueFault =
  | { readonly kind: 'number-expected' | 'whole-expected' | 'key-expected' | 'option-expected' | 'empty' }
  | { readonly kind: 'below'; readonly bound: number }
  | { readonly kind: 'above'; readonly bound: number };

/** Least and greatest value; `undefined` where there is no bound. */
export interface ValueBounds {
  readonly min?: number;
  readonly max?: number;
}

/** Values below the documented least that instruments use with a meaning (common practice). */
const practicalLeast: Readonly<Record<string, number>> = {
  // Every velocity, written from 0.
  lovel: 0,
  // Switches key triggering off.
  key: -1,
  lokey: -1,
  hikey: -1,
  // The region is silent but still triggers.
  end: -1,
};

/** Words that stand in for a number (common practice): the root key that the sample file carries. */
const practicalWords: Readonly<Record<string, string>> = { pitch_keycenter: 'sample' };

/** The bounds of an opcode's value: the documented ones, widened by what has a meaning in practice. */
export function boundsOf(facts: OpcodeFacts): ValueBounds {
  const least = practicalLeast[facts.pattern];
  const min = least !== undefined && facts.min !== undefined ? Math.min(least, facts.min) : facts.min;
  return { ...(min !== undefined && { min }), ...(facts.max !== undefined && { max: facts.max }) };
}

/** The documented default as a number; `undefined` where there is none or it is a note in words. */
export function defaultNumberOf(facts: OpcodeFacts): number | undefined {
  return facts.defaultText === undefined ? undefined : numberIn(facts.defaultText);
}

/** Whether a number is within the bounds of an opcode, or is its documented default. */
function isValueInBounds(facts: OpcodeFacts, value: number): boolean {
  const { min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY } = boundsOf(facts);
  return (value >= min && value <= max) || value === defaultNumberOf(facts);
}

/**
 * Whether a word is one that the opcode can be: in any letter case. The `type` of an effect can also be a dotted
 * name of a vendor's own, none of which this catalogue lists. True for opcodes whose values are not a choice.
 */
export function isOption(facts: OpcodeFacts, value: string): boolean {
  if (facts.options.length === 0) return true;
  const word = value.toLowerCase();
  if (facts.options.includes(word)) return true;
  return facts.pattern === 'type' && /^[a-z]\w*(?:\.\w+)+$/.test(word);
}

/** The number that a value holds: decimal, with an optional sign, fraction and exponent. `undefined` for other text. */
export function numberIn(value: string): number | undefined {
  return /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(value) ? Number(value) : undefined;
}

/** What is wrong with the text of a value, or `undefined` when nothing is. White space around it is ignored. */
export function valueFault(facts: OpcodeFacts, text: string): ValueFault | undefined {
  const value = text.trim();
  if (facts.kind === 'text' || facts.kind === 'any' || facts.kind === 'path') return undefined;
  if (value === '') return { kind: 'empty' };
  if (facts.kind === 'option') return isOption(facts, value) ? undefined : { kind: 'option-expected' };
  if (practicalWords[facts.pattern] === value.toLowerCase()) return undefined;
  const number = numberIn(value) ?? (facts.kind === 'key' ? keyOfNoteName(value) : undefined);
  if (number === undefined) return { kind: facts.kind === 'key' ? 'key-expected' : 'number-expected' };
  if (facts.kind !== 'number' && !Number.isInteger(number)) return { kind: 'whole-expected' };
  if (isValueInBounds(facts, number)) return undefined;
  const { min, max } = boundsOf(facts);
  if (min !== undefined && number < min) return { kind: 'below', bound: min };
  return max === undefined ? undefined : { kind: 'above', bound: max };
}
