import type { Instrument } from '../model/instrument';
import { Parameter } from '../model/parameterNames';
import type { MapKeyswitch } from './scene';

/**
 * The keys that switch regions, ascending: those of `sw_last`, `sw_down` and `sw_up` (open SFZ format), note and
 * octave offset added as for other keys. The label is the `sw_label` that stands with the first `sw_last` of the key.
 */
export function findKeyswitches(instrument: Instrument): MapKeyswitch[] {
  const { names, parameters } = instrument;
  const down = names.canonical(names.idOf('sw_down'));
  const up = names.canonical(names.idOf('sw_up'));
  const labels = new Map<number, string>();
  for (let parameter = 0; parameter < parameters.count; parameter++) {
    const name = instrument.canonicalName(parameter);
    if (name !== Parameter.sw_last && name !== down && name !== up) continue;
    const header = instrument.headerOfParameter(parameter);
    const value = instrument.keyNumber(parameter);
    if (!(value >= 0 && value <= 127)) continue;
    const key = Math.max(0, Math.min(127, Math.trunc(value) + instrument.control(header).keyOffset));
    if (labels.get(key)) continue;
    const label = name === Parameter.sw_last ? instrument.effective(header, Parameter.sw_label) : -1;
    labels.set(key, label >= 0 ? instrument.valueText(label).trim() : '');
  }
  return [...labels].map(([key, label]) => ({ key, label })).sort((one, other) => one.key - other.key);
}
