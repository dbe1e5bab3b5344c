import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, wordedPlace } from '../draft';
import { keyTargets } from '../values/plausible';

/** Notes on ranges that no numbers give: velocities shared out among dynamics, and keys that nothing says. */
export function assumedRanges(assigned: readonly Assigned[], areShared: boolean): Draft[] {
  const drafts: Draft[] = [];
  const layers = assigned.find(({ shared }) => shared);
  if (layers) {
    const are = layers.facts.numeric > 0 ? 'numbers velocity layers' : 'names dynamics';
    drafts.push({
      ...draftAt(layers),
      id: 'velocity.dynamics',
      message: `${wordedPlace(layers)} ${are}: the velocities 1 to 127 are shared out among them.`,
      evidence: ['No numbers give the velocities.', ...(layers.evidence ? [layers.evidence] : [])],
    });
  }
  const sample = assigned.find(({ target }) => target === 'sample');
  const isKeyed = assigned.some(
    ({ target }) => keyTargets.has(target) && !target.startsWith('sw_') && target !== 'pitch_keycenter',
  );
  if (!isKeyed && !areShared && sample)
    drafts.push({
      ...draftAt(sample),
      id: 'keys.missing',
      message: 'No place is known to give the keys, so each region sounds on all keys.',
      isLost: true,
      evidence: ['Names and values of the other places do not say.'],
    });
  return drafts;
}

function draftAt(one: Assigned): Pick<Draft, 'confidence' | 'isGuess' | 'span' | 'isAbout' | 'alternatives'> {
  return { confidence: 0.76, isGuess: true, span: firstValueOf(one), isAbout: () => false, alternatives: [] };
}
