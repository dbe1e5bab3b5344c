import type { SampleFacts } from '../../../model/samples';
import type { ValueForm } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';

/** How a place in a sample is written. */
export type PositionForm = Extract<ValueForm, { kind: 'position' }>;

/** What a place in a sample is counted in. */
export type PositionUnit = PositionForm['unit'];

/** Of targets whose number is a length. */
export const countedFrom: Readonly<Record<string, 'offset' | 'loop_start'>> = {
  loop_length: 'loop_start',
  sample_length: 'offset',
};
/** The parameters that such targets become. */
export const parameterOf: Readonly<Record<string, string>> = {
  loop_length: 'loop_end',
  sample_length: 'end',
};

/** Whether a parameter is the one of a place. */
export function isAt(assigned: Assigned): Draft['isAbout'] {
  const parameter = parameterOf[assigned.target] ?? assigned.target;
  return (one) => one.parameter === parameter && one.at === assigned.column.at;
}

/** Whether a place says where something ends. */
export function isEnd({ target }: Assigned): boolean {
  return target === 'end' || target === 'loop_end';
}

/** A position in a unit as frames of a sample; fractions of a frame are kept. */
export function framesOf(value: number, unit: PositionUnit, facts: SampleFacts): number {
  switch (unit) {
    case 'frames':
      return value;
    case 'seconds':
      return value * facts.sampleRate;
    case 'milliseconds':
      return (value * facts.sampleRate) / 1000;
    case 'fraction':
      return value * facts.frames;
    case 'percent':
      return (value * facts.frames) / 100;
  }
}
