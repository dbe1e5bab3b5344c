import type { Instrument } from '../instrument';

/** The parameters of a text by name, chained from the last to the first. */
export interface ParameterChains {
  /** By canonical name the last parameter of it, or −1. */
  last: Int32Array;
  /** By parameter the one of the same canonical name before it, or −1. */
  before: Int32Array;
}

/**
 * By header the parameter of a canonical name that is in force in it, or −1; `undefined` where the instrument does not set the
 * name. Costs one walk over the headers; for names that a `key` stands for as well, `Instrument.effective` is the one to ask.
 */
export function inForceByHeader(
  instrument: Instrument,
  { last, before }: ParameterChains,
  name: number,
): Int32Array | undefined {
  let parameter = last[name] ?? -1;
  if (parameter < 0) return undefined;
  const { count } = instrument.headers;
  const column = new Int32Array(count).fill(-1);
  let header = count - 1;
  for (; parameter >= 0; parameter = before[parameter]) {
    while (instrument.firstParameter(header) > parameter) header--;
    // Of several in one header the last one counts, which comes first here.
    if (column[header] < 0) column[header] = parameter;
  }
  for (header = 0; header < count; header++) {
    const parent = instrument.parent(header);
    if (parent >= 0 && column[header] < 0) column[header] = column[parent];
  }
  return column;
}
