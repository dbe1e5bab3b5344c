import type { TableOptions, TableReading } from '../../../server/table/readTable';
import { readZoneTable } from '../../../server/table/readTable';

/**
 * The regions of a reading as plain objects: parameter names to values, those of the
 * group among them, its name under `group`.
 */
export function regionsOf({ instrument }: TableReading): Record<string, string>[] {
  return [...instrument.regions].map((region) => {
    const values: Record<string, string> = {};
    const group = instrument.parent(region);
    for (const header of group < 0 ? [region] : [group, region]) {
      const end = instrument.endParameter(header);
      for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
        const name = instrument.names.text(instrument.name(parameter));
        values[name === 'group_label' ? 'group' : name] = instrument.valueText(parameter);
      }
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

/** A table of lines whose cells are parted by bars, as tabs part them. */
export function table(...lines: string[]): string {
  return lines.map((line) => line.replace(/ *\| */g, '\t')).join('\n');
}
