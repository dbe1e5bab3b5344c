import type { Instrument } from '../instrument';
import { Parameter } from '../parameterNames';

/** The opcodes that say which keys a region has; `key` stands for the three others. */
export const keyNames: ReadonlySet<number> = new Set([
  Parameter.key,
  Parameter.lokey,
  Parameter.hikey,
  Parameter.pitch_keycenter,
]);

/** Whether a variable stands for the whole parameter, name and value. */
export function isOpcode(instrument: Instrument, parameter: number): boolean {
  return instrument.valueSpan(parameter).start <= instrument.nameSpan(parameter).start;
}
