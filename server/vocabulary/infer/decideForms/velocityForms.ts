import type { ValueForm } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { exampleOf, otherForm } from '../draft';
import { unitTextOf } from './unitText';

type Velocity = Extract<ValueForm, { kind: 'velocity' }>;

/** How velocities are written in a document: all of its places follow one convention. */
export interface VelocityForms {
  formOf: (assigned: Assigned) => Velocity;
  drafts: Draft[];
}

/** Decides by the greatest velocity, and by whether layers share their bounds. */
export function decideVelocityForms(velocities: readonly Assigned[]): VelocityForms {
  if (velocities.length === 0) return { formOf: () => ({ kind: 'velocity', most: 127 }), drafts: [] };
  const { most, confidence, reason, others } = mostOf(velocities);
  const touching = shareBounds(velocities, most);
  const step = touching ? undefined : stepOf(velocities, most);
  const span = exampleOf(velocities[0]);
  const isAbout: Draft['isAbout'] = ({ form }) => form.kind === 'velocity';
  const drafts: Draft[] = [
    {
      id: 'velocity.most',
      message: `Velocities run from 0 to ${most}.`,
      confidence,
      evidence: [reason],
      span,
      isAbout,
      alternatives: others.map((other) =>
        otherForm(`velocities from 0 to ${other}`, (form) =>
          form.kind === 'velocity' ? { ...form, most: other } : form,
        ),
      ),
    },
  ];
  if (touching) {
    drafts.push({
      id: 'velocity.touching',
      message: 'A layer ends where the next one begins.',
      confidence: touching.confidence,
      evidence: [touching.reason],
      span,
      isAbout,
      alternatives: [
        otherForm('both layers play the velocity that they share', (form) => {
          if (form.kind !== 'velocity') return form;
          const { touching: _, ...rest } = form;
          return rest;
        }),
      ],
    });
  }
  return {
    formOf: ({ facts }) => ({
      kind: 'velocity',
      most,
      ...(touching && { touching: true }),
      ...(step !== undefined && { step }),
      ...unitTextOf(facts),
    }),
    drafts,
  };
}

function mostOf(velocities: readonly Assigned[]): {
  most: number;
  confidence: number;
  reason: string;
  others: number[];
} {
  let greatest = 0;
  let least = Number.POSITIVE_INFINITY;
  let isFractional = false;
  let isPercent = false;
  for (const { facts, unit } of velocities) {
    greatest = Math.max(greatest, facts.greatest);
    least = Math.min(least, facts.least);
    if (facts.whole < facts.numeric) isFractional = true;
    if (facts.unit === 'percent' || unit === 'percent') isPercent = true;
  }
  if (isPercent) return { most: 100, confidence: 0.95, reason: 'They are percentages.', others: [127, 1] };
  if (greatest <= 1) {
    if (isFractional)
      return { most: 1, confidence: 0.97, reason: 'All of them lie from 0 to 1.', others: [127] };
    return {
      most: 1,
      confidence: greatest === 1 && least === 0 ? 0.7 : 0.5,
      reason: 'Only 0 and 1 occur, which could also be the lowest of 127.',
      others: [127, 100],
    };
  }
  if (greatest > 128)
    return {
      most: greatest <= 255 ? 255 : 256,
      confidence: 0.8,
      reason: `The greatest is ${greatest}.`,
      others: [127],
    };
  if (greatest === 128) return { most: 128, confidence: 0.8, reason: 'The greatest is 128.', others: [127] };
  if (greatest > 100)
    return { most: 127, confidence: 0.97, reason: `The greatest is ${greatest}.`, others: [100] };
  if (greatest === 100 && isFractional)
    return {
      most: 100,
      confidence: 0.85,
      reason: 'The greatest is 100, and there are fractions.',
      others: [127],
    };
  if (greatest === 100 && least === 0) {
    const isLayered = shareOrFollow(velocities);
    return {
      most: isLayered ? 100 : 127,
      confidence: 0.7,
      reason: `They run from 0 to 100${isLayered ? ' in layers' : ''}, which could be percentages or the lower part of 127.`,
      others: [isLayered ? 127 : 100],
    };
  }
  if (greatest === 100) {
    return {
      most: 127,
      confidence: 0.8,
      reason: `They lie from ${least} to 100, and MIDI counts velocities up to 127.`,
      others: [100],
    };
  }
  return {
    most: 127,
    confidence: isFractional ? 0.6 : 0.8,
    reason: `The greatest is ${greatest}, and MIDI counts velocities up to 127.`,
    others: [100],
  };
}

/** Whether a layer starts where another one ends, or right behind. */
function shareOrFollow(velocities: readonly Assigned[]): boolean {
  const low = new Set(
    velocities.filter(({ target }) => target === 'lovel').flatMap(({ facts }) => [...facts.numbers]),
  );
  return velocities.some(
    ({ target, facts }) =>
      target === 'hivel' && facts.numbers.some((one) => low.has(one) || low.has(one + 1)),
  );
}

/** Whole numbers that are coarser than velocities: a layer reaches up to the whole number at which the next one begins. */
function stepOf(velocities: readonly Assigned[], most: number): 1 | undefined {
  if (most >= 127 || most <= 1 || velocities.some(({ facts }) => facts.whole < facts.numeric))
    return undefined;
  const low = new Set<number>();
  for (const { target, facts } of velocities)
    if (target === 'lovel') for (const one of facts.numbers) low.add(one);
  const inner = velocities
    .filter(({ target }) => target === 'hivel')
    .flatMap(({ facts }) => [...new Set(facts.numbers)].filter((one) => one < most && one > 0));
  const next = inner.filter((one) => low.has(one + 1)).length;
  return inner.length > 0 && next * 10 >= inner.length * 8 ? 1 : undefined;
}

/** Whether high ends are again low ends of other layers. */
function shareBounds(
  velocities: readonly Assigned[],
  most: number,
): { confidence: number; reason: string } | undefined {
  const low = new Set<number>();
  const high = new Set<number>();
  for (const { target, facts } of velocities) {
    if (target !== 'lovel' && target !== 'hivel') continue;
    for (const number of facts.numbers)
      if (!Number.isNaN(number)) (target === 'lovel' ? low : high).add(number);
  }
  const inner = [...high].filter((one) => one < most && one > 0);
  const shared = inner.filter((one) => low.has(one)).length;
  // A layer of one velocity has the same low and high end.
  const next = inner.filter((one) => low.has(one + 1) && most > 1).length;
  if (inner.length === 0 || shared * 10 < inner.length * 8 || shared <= next) return undefined;
  return {
    confidence: inner.length > 1 || most === 1 ? 0.9 : 0.8,
    reason: `${shared} of ${inner.length} high ends are the low end of another layer too.`,
  };
}
