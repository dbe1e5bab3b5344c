import { rowKeyNumber } from '../ranges/rowKeys';
import type { InferredTarget } from '../words/meaningRules';
import type { ColumnFacts } from './columnFacts';

/** A place of a region by what it holds, where its name says little. */
export interface Contents {
  facts: ColumnFacts;
  texts: readonly (string | undefined)[];
  /** Its name in small letters. */
  name: string;
}

/** What the values of a place say it is, and why. */
export interface ContentReading {
  target: InferredTarget;
  weight: number;
  evidence: string;
}

const orders: readonly (readonly [low: number, root: number, high: number])[] = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
];

/** Three places of keys that are in the same order in every row: the low key, the root key and the high key. */
export function readKeyTriple(places: readonly Contents[]): ReadonlyMap<Contents, ContentReading> {
  const readings = new Map<Contents, ContentReading>();
  const keys = places.filter(({ facts }) => isKeys(facts));
  if (keys.length !== 3) return readings;
  const numbers = keys.map(({ texts }) => texts.map((text) => rowKeyNumber(text)));
  const rows = numbers[0]?.length ?? 0;
  const fitting = orders.filter(([low, root, high]) => {
    let spans = 0;
    for (let row = 0; row < rows; row++) {
      const [a, b, c] = [low, root, high].map((at) => numbers[at]?.[row] ?? Number.NaN) as [
        number,
        number,
        number,
      ];
      if (a > b || b > c) return false;
      if (a < c) spans++;
    }
    return spans > 0;
  });
  const named = fitting.filter(
    ([low, , high]) => keys[low]?.name.startsWith('l') || keys[high]?.name.startsWith('h'),
  );
  const [order] = named.length > 0 ? named : fitting;
  if (!order) return readings;
  const isClear = fitting.length === 1 || named.length === 1;
  const filled = Math.min(...keys.map(({ facts }) => facts.filled));
  const weight = isClear ? (filled > 3 ? 0.9 : filled > 1 ? 0.8 : 0.7) : 0.55;
  for (const [at, target] of (['lokey', 'pitch_keycenter', 'hikey'] as const).entries()) {
    readings.set(keys[order[at]], {
      target,
      weight,
      evidence: `Its values and those of two other places are keys, in the order low, root and high in all of ${filled} regions.`,
    });
  }
  return readings;
}

function isKeys({
  filled,
  notes,
  whole,
  numeric,
  least,
  greatest,
  unit,
  isCounting,
  tally,
}: ColumnFacts): boolean {
  if (filled === 0 || unit !== undefined || isCounting || notes + whole < filled) return false;
  if (notes === 0 && (numeric < filled || least < 0 || greatest > 127)) return false;
  // What is 0, 1 or 127 throughout says nothing of keys.
  return notes > 0 || (greatest > 1 && (tally.size > 1 || filled === 1));
}

/** What a unit behind the numbers says. */
export function readByUnit({ facts }: Pick<Contents, 'facts'>): ContentReading | undefined {
  const behind = facts.unitText?.trim();
  const evidence = `Its numbers are followed by "${behind}".`;
  if (facts.unit === 'dB') return { target: 'volume', weight: 0.85, evidence };
  if (facts.unit === 'cents') return { target: 'tune', weight: 0.85, evidence };
  return facts.unit === 'semitones' ? { target: 'tune', weight: 0.8, evidence } : undefined;
}
