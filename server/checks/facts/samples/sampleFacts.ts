import type { SampleFacts, SampleState } from '../../../model/samples';

/** The facts of a sample that was read whole, as far as its state gives them. */
export function sampleFactsOf(state: SampleState): SampleFacts | undefined {
  if (state.kind !== 'file' && state.kind !== 'otherCase') return undefined;
  return state.reading?.kind === 'facts' ? state.reading.facts : undefined;
}

/** As {@link sampleFactsOf}, without files that are cut short, whose length says nothing of the instrument, and empty ones. */
export function usableFactsOf(state: SampleState): SampleFacts | undefined {
  const facts = sampleFactsOf(state);
  if (!facts || !(facts.frames > 0)) return undefined;
  const isCut = facts.problems.length > 0 && facts.problems.some(({ kind }) => kind === 'cut-short');
  return isCut ? undefined : facts;
}
