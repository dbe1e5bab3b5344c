import type { Instrument } from '../instrument';
import type { ConversionNote } from '../notes';

/** What was assumed on reading to know values, by parameter. */
export function assumedOnReading(instrument: Instrument): Map<number, ConversionNote[]> {
  const notes = new Map<number, ConversionNote[]>();
  for (const [parameter, message] of instrument.parameters.translated?.assumed ?? [])
    notes.set(parameter, [{ kind: 'assumed', ...instrument.parameterSpan(parameter), message }]);
  return notes;
}

/** What a reader could not make sense of and so did not take over: values of its text that are lost before anything is written. */
export function lostOnReading(instrument: Instrument): ConversionNote[] {
  const notes: ConversionNote[] = [];
  for (const { code, source, start, end, message } of instrument.findings) {
    if (code === 'opcode-value') notes.push({ kind: 'dropped', source, start, end, message });
    else if (code === 'syntax-error') notes.push({ kind: 'ignored', source, start, end, message });
  }
  return notes;
}
