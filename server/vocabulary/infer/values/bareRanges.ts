import type { InferredTarget } from '../words/meaningRules';
import { isBare } from '../words/meanings';
import type { Column } from './column';
import type { ColumnFacts } from './columnFacts';

/** What a place holds, as far as it matters here. */
interface Held {
  column: Column;
  target: InferredTarget;
  weight: number;
  part: 1 | 2 | undefined;
  facts: ColumnFacts;
  evidence: string | undefined;
}

const keyEnds: ReadonlySet<string> = new Set(['lokey', 'hikey']);
const anyKeys: ReadonlySet<string> = new Set([...keyEnds, 'key', 'pitch_keycenter']);
const velocityOf: Readonly<Record<string, string>> = { lokey: 'lovel', hikey: 'hivel' };
/** Velocities of MIDI and percentages end here. */
const velocityTops: ReadonlySet<number> = new Set([127, 100, 128]);

/**
 * Bare ends such as `from` and `to` are velocities where they stand in an element whose keys another one around it gives, and reach
 * the greatest velocity.
 */
export function withVelocitiesInKeys<One extends Held>(all: readonly One[]): One[] {
  if (all.some(({ target }) => target === 'lovel' || target === 'hivel')) return [...all];
  const bare = all.filter(
    ({ target, column, facts, part }) =>
      keyEnds.has(target) &&
      part === undefined &&
      facts.notes === 0 &&
      facts.unlined === 0 &&
      isBare(column.own) &&
      column.around.every(isBare),
  );
  const levels = [...new Set(bare.map(({ column }) => column.level))].sort((one, other) => other - one);
  for (const level of levels) {
    const here = bare.filter(({ column }) => column.level === level);
    const isKeyed = all.some(
      (one) => anyKeys.has(one.target) && one.column.level < level && !here.includes(one),
    );
    const hasOwnRoot = all.some(
      ({ target, column }) => target === 'pitch_keycenter' && column.level === level,
    );
    const top = Math.max(...here.map(({ facts }) => facts.greatest));
    if (!isKeyed || hasOwnRoot || !velocityTops.has(top)) continue;
    const evidence = 'An element around it gives the keys, and its numbers reach the greatest velocity.';
    return all.map((one) =>
      here.includes(one)
        ? { ...one, target: velocityOf[one.target], weight: Math.max(0.8, one.weight), evidence }
        : one,
    );
  }
  return [...all];
}

/** The pitch of an element that is named after a note is its key, where no place gives keys. */
export function withKeysOfPitches<One extends Held>(all: readonly One[]): One[] {
  if (all.some(({ target }) => keyEnds.has(target) || target === 'key')) return [...all];
  return all.map((one) => {
    const { own } = one.column;
    const isPitch = own.some((word) => pitchWords.has(word)) && own.every((word) => pitchWords.has(word));
    if (one.target !== 'pitch_keycenter' || !isPitch) return one;
    const evidence = 'No place gives the keys, and its name speaks of a note.';
    return { ...one, target: 'key', weight: Math.min(one.weight, 0.72), evidence };
  });
}

const pitchWords: ReadonlySet<string> = new Set(
  'pitch tone note ton tonhohe hauteur tono altura altezza toonhoogte tonhojd'.split(' '),
);
