import type { Instrument } from '../instrument';
import type { ConversionNote } from '../notes';
import { spanIn } from '../text/span';

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
    const span = spanIn(source, start, end);
    if (code === 'opcode-value') notes.push({ kind: 'dropped', ...span, message });
    else if (code === 'syntax-error') notes.push({ kind: 'ignored', ...span, message });
  }
  return notes;
}
