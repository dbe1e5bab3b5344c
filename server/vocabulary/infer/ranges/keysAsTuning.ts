import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import type { Column } from '../values/column';
import { rowKeyNumber } from './rowKeys';

/** Fewer different numbers may be near the keys by chance. Our choice. */
const leastDifferent = 4;
/** A range of keys reaches no farther from its root, as a rule. Our choice. */
const mostAway = 12;
const tunings: ReadonlySet<string> = new Set(['tune', 'transpose']);
const keys: readonly string[] = ['pitch_keycenter', 'key', 'lokey', 'hikey'];

/** Places that their names would make a tuning, though their numbers go along with the keys of the regions: they are keys too. */
export function keysNamedAsTuning(assigned: readonly Assigned[]): Column[] {
  const ofKeys = assigned.filter(({ target }) => keys.includes(target));
  return assigned.filter((one) => goesAlong(one, ofKeys)).map(({ column }) => column);
}

function goesAlong({ target, unit, facts, part }: Assigned, ofKeys: readonly Assigned[]): boolean {
  if (!tunings.has(target) || unit !== undefined || facts.unit !== undefined || part !== undefined)
    return false;
  if (facts.whole !== facts.filled || facts.least < mostAway || facts.tally.size < leastDifferent)
    return false;
  return ofKeys.some(({ texts }) => {
    const differences = [...facts.numbers].flatMap((number, row) => {
      const key = rowKeyNumber(texts[row]);
      return Number.isNaN(number) || key === undefined ? [] : [Math.abs(number - key)];
    });
    return differences.length === facts.filled && differences.every((away) => away <= mostAway);
  });
}

/** Tells of such places that no other parameter was found for. */
export function keyLikeDrafts(
  columns: readonly Column[],
  assigned: readonly Assigned[],
  chain: readonly string[],
): Draft[] {
  return columns.flatMap((column): Draft[] => {
    const example = column.cells.find((cell) => cell !== undefined);
    if (!example || assigned.some((one) => one.column === column)) return [];
    const element = chain[column.level];
    return [
      {
        id: `${element}/${column.at}`,
        message: `"${column.at.replace(/^@/, '')}" of <${element}> is not read. Its numbers, such as "${example.text.slice(0, 40)}", go along with the keys of the regions, as ends of key ranges do.`,
        confidence: 0.3,
        isLost: true,
        evidence: ['Its name speaks of tuning, and its numbers do not.'],
        span: example,
        isAbout: () => false,
        alternatives: [],
      },
    ];
  });
}
