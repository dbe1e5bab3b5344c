import type { ScaleReading } from '../../../trade/scales/numbers';
import { numbersOf } from '../../../trade/scales/numbers';
import { velocityScale } from '../../../trade/scales/velocityScale';
import { velocityShares } from '../../../trade/scales/velocityShares';
import type { ValueForm } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, otherForm } from '../draft';
import { saysSo } from '../saysSo';
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
  const { scale: most, confidence, reason, isOpen, others } = mostOf(velocities);
  const touching = shareBounds(velocities, most);
  const step = touching ? undefined : stepOf(velocities, most);
  // The first of few steps would leave the softest velocities to no layer.
  const isCounted = most * 1.5 < 127 && !endsOf(velocities, 'lovel').has(0);
  const span = firstValueOf(velocities[0]);
  const isAbout: Draft['isAbout'] = ({ form }) => form.kind === 'velocity';
  const drafts: Draft[] = [
    {
      id: 'velocity.most',
      message: `Velocity is written from 0 to ${most}.`,
      confidence,
      ...(isOpen && { isGuess: true }),
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
      ...(step !== undefined && (isCounted ? { fromOne: true } : { step })),
      ...unitTextOf(facts),
    }),
    drafts,
  };
}

function mostOf(velocities: readonly Assigned[]): ScaleReading<number> {
  const stated = velocities.find((one) => one.stated?.range)?.stated;
  if (stated?.range)
    return {
      scale: stated.range.high,
      isOpen: stated.range.high !== 127,
      confidence: 0.96,
      reason: saysSo(stated.text),
      others: [],
    };
  const numbers = velocities.flatMap(({ facts }) => [...facts.numbers]);
  return velocityScale({
    all: numbersOf(numbers),
    areLayered: shareOrFollow(velocities),
    shares: velocityShares(endsOf(velocities, 'lovel'), endsOf(velocities, 'hivel')),
    inPercent: velocities.some(({ facts, unit }) => facts.unit === 'percent' || unit === 'percent'),
  });
}

function endsOf(velocities: readonly Assigned[], end: 'lovel' | 'hivel'): Set<number> {
  return new Set(
    velocities.filter(({ target }) => target === end).flatMap(({ facts }) => [...facts.numbers]),
  );
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
