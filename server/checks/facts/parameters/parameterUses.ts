import type { CheckContext } from '../../rule';
import type { ParameterSurvey } from './parameterSurvey';
import { fewUses, parameterSurveyOf } from './parameterSurvey';

/** Which parameters an instrument sets at all, so that rules about rare ones cost nothing where there are none. */
export type ParameterUses = Pick<ParameterSurvey, 'names' | 'first' | 'repeated'>;

/** The parameters that an instrument sets, worked out once in a check. */
export function parameterUsesOf({ instrument }: CheckContext): ParameterUses {
  return parameterSurveyOf(instrument);
}

/** The canonical number of an opcode name that the instrument sets, or −1 where it sets none. */
export function usedName({ instrument }: CheckContext, name: string): number {
  const { names } = instrument;
  const number = names.canonical(names.idOf(name));
  return (parameterSurveyOf(instrument).first[number] ?? -1) >= 0 ? number : -1;
}

/** The parameters of a canonical number, the last one first. */
export function* parametersNamed({ instrument }: CheckContext, name: number): Iterable<number> {
  const { first, last, few } = parameterSurveyOf(instrument);
  const list = few[name] ?? [];
  if (list.length < fewUses) {
    for (let at = list.length - 1; at >= 0; at--) yield list[at];
    return;
  }
  const start = first[name];
  for (let parameter = last[name]; parameter >= start; parameter--) {
    if (instrument.canonicalName(parameter) === name) yield parameter;
  }
}
