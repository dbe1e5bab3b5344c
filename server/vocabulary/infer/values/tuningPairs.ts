import type { Assigned } from '../assign';
import { conceptsOf } from '../words/tradeWords';
import type { Column } from './column';
import type { ColumnFacts } from './columnFacts';
import { columnFactsOf, textsOf } from './columnFacts';
import type { Rows } from './rows';

/** What shortened names of a coarse and a fine tuning differ by (from memory): `tc` and `tf`, `crsT` and `finT`, `gs` and `fs`. */
const differences: readonly (readonly [coarse: string, fine: string])[] = [
  ['c', 'f'],
  ['g', 'f'],
  ['s', 'c'],
  ['k', 'c'],
  ['co', 'fi'],
  ['cr', 'fn'],
  ['crs', 'fin'],
  ['crs', 'fine'],
  ['crs', 'fn'],
  ['st', 'ct'],
  ['semi', 'cent'],
];
/** What is left of shortened words for tuning (from memory). */
const tuningStems: ReadonlySet<string> = new Set('t tn tu tun tune tuning p pi pit pitch dt det'.split(' '));
/** Whole keys farther away are no tuning of a sample that still sounds like one (our choice). */
const mostCoarse = 48;
const mostFine = 100;
const tunings: ReadonlySet<string> = new Set(['tune', 'transpose']);
/** More places are not looked at in pairs (our choice). */
const mostPlaces = 60;
/** A name that says so surely is no shortened one. */
const surelyNamed = 0.9;

interface Place {
  column: Column;
  name: string;
  texts: readonly (string | undefined)[];
  facts: ColumnFacts;
  taken: Assigned | undefined;
}

/**
 * Two places whose shortened names differ by letters for coarse and fine, the one with a few semitones, the other with cents: `ct` and
 * `ft`. What the one is by its own name, as `ct` for cents, does not count then.
 */
export function withTuningPairs(rows: Rows, all: readonly Assigned[]): Assigned[] {
  const [sample] = all;
  if (!sample) return [];
  const columns = rows.columns.slice(0, mostPlaces);
  const places = columns.flatMap((column): Place[] => {
    const name = column.own.join('');
    const own = all.filter((one) => one.column === column);
    const [taken] = own;
    if (own.length > 1 || column.listed || column.unit !== undefined || name.length > 8) return [];
    if (taken && !tunings.has(taken.target) && taken.weight >= 0.75) return [];
    const texts = textsOf(column);
    const facts = columnFactsOf(texts);
    const areNumbers = facts.filled > 0 && facts.numeric === facts.filled && facts.unit === undefined;
    return areNumbers ? [{ column, name, texts, facts, taken }] : [];
  });
  for (const coarse of places) {
    for (const fine of places) {
      if (coarse === fine || !arePair(coarse, fine)) continue;
      if (isTold(coarse, 'transpose') && isTold(fine, 'tune')) continue;
      const others = all.filter(({ column }) => column !== coarse.column && column !== fine.column);
      if (others.some(({ target, column }) => tunings.has(target) && column.level === coarse.column.level))
        continue;
      const unit = isFraction(fine.facts) ? 'semitones' : 'cents';
      const made = ({ column, texts, facts }: Place, target: string, counted: 'semitones' | 'cents') => ({
        ...sample,
        column,
        texts,
        facts,
        target,
        unit: counted,
        weight: 0.74,
        part: undefined,
        between: undefined,
        others: [],
        evidence: `"${coarse.name}" and "${fine.name}" look like a coarse tuning in semitones and a fine one in ${unit}, by their names and numbers.`,
      });
      return [...others, made(coarse, 'transpose', 'semitones'), made(fine, 'tune', unit)];
    }
  }
  return [...all];
}

/** Whether two places hold a coarse and a fine tuning by their names and numbers. */
function arePair(coarse: Place, fine: Place): boolean {
  const [one, other] = [coarse.column, fine.column];
  if (one.level !== other.level || one.around.join() !== other.around.join()) return false;
  const stem = stemOf(coarse.name, fine.name);
  if (stem === undefined) return false;
  const [far, near] = [extentOf(coarse.facts), extentOf(fine.facts)];
  if (coarse.facts.whole < coarse.facts.filled || far > mostCoarse || near > mostFine) return false;
  if (tuningStems.has(stem) || [coarse, fine].some(({ taken }) => taken && tunings.has(taken.target)))
    return true;
  // Names that say nothing need numbers as only tunings have them.
  return (
    coarse.facts.negative + fine.facts.negative > 0 &&
    far <= 24 &&
    (near > far || isFraction(fine.facts)) &&
    far > 0
  );
}

function isTold({ taken }: Place, target: string): boolean {
  return taken?.target === target && taken.weight >= surelyNamed;
}

/** What two names share besides letters for coarse and fine. */
function stemOf(coarse: string, fine: string): string | undefined {
  for (const [one, other] of differences) {
    for (const [coarseStem, fineStem] of [
      [after(coarse, one), after(fine, other)],
      [before(coarse, one), before(fine, other)],
    ])
      if (coarseStem !== undefined && coarseStem === fineStem && !isOther(coarseStem)) return coarseStem;
  }
  return undefined;
}

/** Whether a stem means something that is no tuning, as `vol` does. */
function isOther(stem: string): boolean {
  if (tuningStems.has(stem) || stem.length < 2) return false;
  return conceptsOf(stem)?.concepts.every((one) => !['tune', 'pitch', 'key'].includes(one)) === true;
}

function after(name: string, start: string): string | undefined {
  return name.startsWith(start) ? name.slice(start.length) : undefined;
}

function before(name: string, end: string): string | undefined {
  return name.endsWith(end) ? name.slice(0, -end.length) : undefined;
}

function extentOf({ least, greatest }: ColumnFacts): number {
  return Math.max(Math.abs(least), Math.abs(greatest));
}

/** Whether a fine tuning is written in parts of a semitone. */
function isFraction(facts: ColumnFacts): boolean {
  return facts.whole < facts.filled && extentOf(facts) <= 1;
}
