import type { Unit } from '../../../trade/meaning';
import { unitPartsIn } from '../../../trade/phrases/unitFractions';
import type { Assigned } from '../assign';
import { timeTargets } from '../values/plausible';
import type { InferredTarget } from '../words/meaningRules';

const mostTexts = 200;
const longest = 400;

/** A unit that a sentence names as a part of another one. */
interface StatedPart {
  text: string;
  /** The letters of the sentence without blanks, for names of places to be looked for in it. */
  letters: string;
}

/**
 * Places with the unit that sentences name as a part of another one, as `hundredths of a dB`: by the name of the place, of levels and
 * tunings also by that unit alone, which nothing else is counted in.
 */
export function withUnitParts(assigned: readonly Assigned[], prose: readonly string[]): Assigned[] {
  const stated = prose
    .slice(0, mostTexts)
    .flatMap((text) => text.slice(0, longest * 4).split(/[.!?;](?=\s|$)|,\s/u))
    .map((text) => text.replace(/\s+/g, ' ').trim().slice(0, longest))
    .filter((text) => unitPartsIn(text, () => true) !== undefined)
    .map((text): StatedPart => ({ text, letters: lettersOf(text) }));
  if (stated.length === 0) return [...assigned];
  const names = assigned.map(({ column }) => column.own.join('')).filter(({ length }) => length > 2);
  return assigned.map((one) => {
    if (one.facts.unit !== undefined || (one.unit !== undefined && !isDecibels(one.unit))) return one;
    const name = one.column.own.join('');
    const named = stated.find(({ letters }) => name.length > 1 && letters.includes(name));
    const isOfNone = ({ letters }: StatedPart) => !names.some((other) => letters.includes(other));
    const said = named ?? (timeTargets.has(one.target) ? undefined : stated.find(isOfNone));
    const times = said && timesIn(said.text, one);
    return said && times !== undefined
      ? { ...one, times, stated: { text: said.text, range: undefined } }
      : one;
  });
}

/** A name such as `gain-db` may say no more than what the parts are of. */
function isDecibels(unit: Assigned['unit']): boolean {
  return unit === 'dB';
}

function lettersOf(text: string): string {
  return text.toLowerCase().replace(/[\s_.-]+/g, '');
}

/** How much of the parameter's own unit a whole one is, by what it counts. */
function unitsOf({ target, facts }: Assigned): Readonly<Partial<Record<Unit, number>>> {
  if (target === 'attenuation') return { dB: facts.negative > 0 ? 1 : -1 };
  if (timeTargets.has(target)) return { s: 1, ms: 0.001 };
  return wholes[target] ?? {};
}

const wholes: Readonly<Record<InferredTarget, Readonly<Partial<Record<Unit, number>>>>> = {
  volume: { dB: 1 },
  tune: { cents: 1, semitones: 100 },
};

function timesIn(text: string, one: Assigned): number | undefined {
  const units = unitsOf(one);
  const found = unitPartsIn(text, (unit) => units[unit] !== undefined);
  const whole = found && units[found.whole];
  return found === undefined || whole === undefined ? undefined : found.parts / whole;
}
