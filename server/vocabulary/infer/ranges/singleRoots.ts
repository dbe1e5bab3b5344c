import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, wordedPlace } from '../draft';
import { rowKeyNumber } from './rowKeys';

/**
 * The place of key ranges, by its first ends, whose single keys are root keys too where no other place gives one: other regions have
 * root keys of their own, or most are on one key, as in a drum kit.
 */
export function singleRoots(assigned: readonly Assigned[]): Assigned | undefined {
  const low = assigned.find(({ target, part }) => target === 'lokey' && part === 1);
  if (!low) return undefined;
  const filled = low.column.cells.filter((cell) => cell !== undefined);
  const single = filled.filter((cell) => rowKeyNumber(cell.text) !== undefined).length;
  const areMost = single * 2 > filled.length;
  const hasRoots = assigned.some(({ target }) => target === 'pitch_keycenter');
  return single > 0 && (hasRoots || areMost) ? low : undefined;
}

/** Tells that single keys are taken for root keys. */
export function singleRootDrafts(assigned: readonly Assigned[]): Draft[] {
  const low = singleRoots(assigned);
  if (!low) return [];
  return [
    {
      id: 'singleRoots',
      message: `Where ${wordedPlace(low)} gives one key alone and no other place a root key, that key is the root key.`,
      confidence: 0.8,
      isGuess: true,
      evidence: ['A sound on one key alone is usually played as it was recorded.'],
      span: firstValueOf(low),
      isAbout: () => false,
      alternatives: [],
    },
  ];
}
