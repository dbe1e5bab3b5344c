import { Parameter } from '../../../server/model/parameterNames';
import type { TableOptions, TableReading } from '../../../server/table/readTable';
import { readZoneTable } from '../../../server/table/readTable';

/** The regions of a reading as plain objects: parameter names to values, the group under `group`. */
export function regionsOf({ instrument }: TableReading): Record<string, string>[] {
  return [...instrument.regions].map((region) => {
    const values: Record<string, string> = {};
    const label = instrument.effective(region, Parameter.group_label as number);
    if (label >= 0) values.group = instrument.valueText(label);
    const end = instrument.endParameter(region);
    for (let parameter = instrument.firstParameter(region); parameter < end; parameter++) {
      values[instrument.names.text(instrument.name(parameter))] = instrument.valueText(parameter);
    }
    return values;
  });
}

/** Reads a table straight to plain regions. */
export function regions(text: string, options?: TableOptions): Record<string, string>[] {
  return regionsOf(readZoneTable(text, options));
}

/** The notes of a reading as `kind: message`. */
export function notesOf(text: string, options?: TableOptions): string[] {
  return readZoneTable(text, options).notes.map(({ kind, message }) => `${kind}: ${message}`);
}
