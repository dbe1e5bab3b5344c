import type { SampleFacts } from '../../../model/samples';
import type { Draft, Settled } from '../draft';
import { firstValueOf, wordedPlace } from '../draft';

/**
 * That regions with loop points loop, where no place says how: without a mode, a sample whose file has no loop would play once
 * (open SFZ format, `loop_mode`). `undefined` where some place says how, none gives an end of loops, or the files have loops of
 * their own.
 */
export function impliedLoops(
  settled: readonly Settled[],
  facts: readonly (SampleFacts | undefined)[],
): { mode: 'loop_continuous'; drafts: Draft[] } | undefined {
  const has = (name: string) =>
    settled.find(({ parameters }) => parameters.some(({ parameter }) => parameter === name));
  const end = has('loop_end');
  if (!end || has('loop_mode')) return undefined;
  const looped = end.assigned.column.cells.flatMap((cell, row) => (cell && facts[row] ? [facts[row]] : []));
  if (looped.length > 0 && looped.every(({ loops }) => loops.length > 0)) return undefined;
  const draft: Draft = {
    id: 'loop_mode',
    message: `Regions with loop points loop, also after the key is released: no place says how. ${wordedPlace(end.assigned)} gives their ends.`,
    confidence: 0.8,
    isGuess: true,
    evidence: ['A sample whose file has no loop would play once.'],
    span: firstValueOf(end.assigned),
    isAbout: () => false,
    alternatives: [],
  };
  return { mode: 'loop_continuous', drafts: [draft] };
}
