import type { Instrument } from '../../model/instrument';

/** The values in force in a header, by canonical name, as they are written. */
export function writtenValues(instrument: Instrument, header: number): Map<string, string> {
  const values = new Map<string, string>();
  for (const { name, parameter } of instrument.effectiveParameters(header))
    values.set(instrument.names.text(name), instrument.valueText(parameter));
  return values;
}
