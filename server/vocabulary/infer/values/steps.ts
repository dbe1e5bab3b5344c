import { counted } from '../../../model/wording/counted';
import type { StepEnd } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, wordedPlace } from '../draft';

const ends: readonly (readonly [given: StepEnd, missing: StepEnd, words: string])[] = [
  ['hikey', 'lokey', 'low key'],
  ['lokey', 'hikey', 'high key'],
  ['hivel', 'lovel', 'low velocity'],
  ['lovel', 'hivel', 'high velocity'],
];

/** Ends of ranges that no place gives, though several different ones of the other end are given: they follow from those. */
export function stepEnds(assigned: readonly Assigned[]): { steps: StepEnd[]; drafts: Draft[] } {
  const steps: StepEnd[] = [];
  const drafts: Draft[] = [];
  for (const [given, missing, words] of ends) {
    const one = assigned.find(({ target }) => target === given);
    const isKey = given.endsWith('key');
    if (!one || one.part !== undefined) continue;
    // What stands around the steps is the end of all of them.
    const hasOther = assigned.some(
      ({ target, column }) =>
        (target === missing && column.level >= one.column.level) || (isKey && target === 'key'),
    );
    if (hasOther) continue;
    if (new Set([...one.facts.tally.keys()].map((text) => text.trim())).size < 2) continue;
    steps.push(missing);
    const isLow = missing.startsWith('lo');
    drafts.push({
      id: `${missing}.step`,
      message: `No place gives the ${words}: it is the one ${isLow ? 'above' : 'below'} what ${wordedPlace(one)} of the ${isLow ? 'step before' : 'next step'} says.`,
      confidence: 0.8,
      isGuess: true,
      evidence: ['Only one end of the ranges is written.'],
      span: firstValueOf(one),
      isAbout: () => false,
      alternatives: [],
    });
    if (one.texts.includes(undefined)) drafts.push(openEnd(one, missing));
  }
  // A note on the layers says how they are shared out.
  if (assigned.some(({ shared }) => shared?.areOpen)) steps.push('hivel');
  return { steps, drafts };
}

/** What becomes of regions that have neither end. */
function openEnd(one: Assigned, missing: StepEnd): Draft {
  const count = one.texts.filter((text) => text === undefined).length;
  const isLow = missing.startsWith('lo');
  const what = missing.endsWith('key') ? 'key' : 'velocity';
  return {
    id: `${missing}.open`,
    message: `${wordedPlace(one)} is missing in ${counted(count, 'region')}. A single one among those that follow each other ${isLow ? 'begins above' : 'ends below'} them; others sound at each ${what}.`,
    confidence: 0.7,
    isGuess: true,
    evidence: ['Only one end of the ranges is written.'],
    span: firstValueOf(one),
    isAbout: () => false,
    alternatives: [],
  };
}
