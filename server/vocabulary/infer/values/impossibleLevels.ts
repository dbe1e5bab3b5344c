import type { Assigned } from '../assign';
import { decideLevelForm } from '../decideForms/soundForms';
import type { Draft } from '../draft';
import { firstValueOf, wordedPlace } from '../draft';

/** No sample is raised by so many dB (our choice; it is a hundred times the amplitude). */
const impossible = 40;

/**
 * Without levels that would be counted in dB though some are far above what anything is raised by: the numbers count otherwise, or not
 * all alike. They could be too loud to hear, so they are left out, which the drafts tell.
 */
export function withoutImpossibleLevels(all: readonly Assigned[]): { assigned: Assigned[]; drafts: Draft[] } {
  const left = all.filter((one) => one.target === 'volume' && areTooLoud(one));
  return {
    assigned: all.filter((one) => !left.includes(one)),
    drafts: left.map((one) => ({
      id: `volume.${one.column.at}.impossible`,
      message: `${wordedPlace(one)} is left out: its levels, ${one.facts.least} to ${one.facts.greatest}, cannot all be in dB. Set the levels by hand.`,
      confidence: 0.7,
      isGuess: true,
      isLost: true,
      evidence: [`A level of ${one.facts.greatest} dB would be far too loud.`],
      span: firstValueOf(one),
      isAbout: () => false,
      alternatives: [],
    })),
  };
}

function areTooLoud(one: Assigned): boolean {
  const { form } = decideLevelForm(one);
  return form.kind === 'level' && form.unit === 'dB' && !form.attenuation && one.facts.greatest >= impossible;
}
