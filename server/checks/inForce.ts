import type { Instrument } from '../model/instrument';

/**
 * For every header the parameters of some canonical names that are in force, in a row of `names.length` each: the
 * position of the parameter, or −1. `undefined` where the instrument sets none of them. Meant for few names over all
 * regions; `Instrument.effective` answers for a single one.
 */
export function parametersInForce(instrument: Instrument, names: readonly number[]): Int32Array | undefined {
  const slots = new Int8Array(instrument.names.size).fill(-1);
  for (let name = 0; name < slots.length; name++) {
    slots[name] = names.indexOf(instrument.names.canonical(name));
  }
  const { count } = instrument.headers;
  const width = names.length;
  const rows = new Int32Array(count * width).fill(-1);
  let any = false;
  for (let header = 0; header < count; header++) {
    const row = header * width;
    const parent = instrument.parent(header);
    if (any && parent >= 0) {
      for (let slot = 0; slot < width; slot++) rows[row + slot] = rows[parent * width + slot] as number;
    }
    const end = instrument.endParameter(header);
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
      const slot = slots[instrument.name(parameter)] as number;
      if (slot < 0) continue;
      rows[row + slot] = parameter;
      any = true;
    }
  }
  return any ? rows : undefined;
}
