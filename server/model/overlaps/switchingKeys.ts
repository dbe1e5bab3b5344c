import { keyswitchOffsets } from '../inForce/keyswitchOffsets';
import type { Instrument } from '../instrument';
import { Parameter } from '../parameterNames';

/** A key that switches regions on or off. */
export interface Keyswitch {
  key: number;
  /** What the text calls its setting; empty where it says nothing. */
  label: string;
}

/** The keys that an instrument uses for switching. */
export interface SwitchingKeys {
  /** Keys that switch regions, ascending. */
  keyswitches: Keyswitch[];
  /** These and the other keys set aside for switching, which are no gaps. */
  taken: ReadonlySet<number>;
}

const marked = ['sw_last', 'sw_down', 'sw_up', 'sw_default'] as const;

/**
 * The keys that switch regions: those of `sw_last`, `sw_down`, `sw_up`, `sw_default` and from `sw_lolast` to `sw_hilast`
 * (open SFZ format), note and octave offset added as for other keys, and what moves keyswitches alone. The label is the `sw_label` that stands with the
 * first `sw_last` of the key. Keys from `sw_lokey` to `sw_hikey` and of `sw_previous` are taken, but switch nothing alone.
 */
export function findSwitchingKeys(instrument: Instrument): SwitchingKeys {
  const { names, parameters } = instrument;
  const number = (name: string): number => names.canonical(names.idOf(name));
  const single = new Set(marked.map(number));
  const previous = number('sw_previous');
  const range = { low: number('sw_lokey'), high: number('sw_hikey') };
  const lastRange = { low: number('sw_lolast'), high: number('sw_hilast') };
  const offsetOf = keyswitchOffsets(instrument);
  const plainOffset = (header: number) => instrument.control(header).keyOffset;
  const labels = new Map<number, string>();
  const taken = new Set<number>();
  for (let parameter = 0; parameter < parameters.count; parameter++) {
    const name = instrument.canonicalName(parameter);
    if (single.has(name)) {
      const key = keyAt(instrument, parameter, offsetOf);
      if (key === undefined || labels.get(key)) continue;
      labels.set(key, name === Parameter.sw_last ? switchLabel(instrument, parameter) : '');
    } else if (name === previous) {
      const key = keyAt(instrument, parameter, plainOffset);
      if (key !== undefined) taken.add(key);
    } else if (name === range.low || name === range.high) {
      for (const key of keysBetween(instrument, parameter, range, offsetOf)) taken.add(key);
    } else if (name === lastRange.low || name === lastRange.high) {
      for (const key of keysBetween(instrument, parameter, lastRange, offsetOf)) {
        if (!labels.has(key)) labels.set(key, '');
      }
    }
  }
  for (const key of labels.keys()) taken.add(key);
  const keyswitches = [...labels].map(([key, label]) => ({ key, label }));
  return { keyswitches: keyswitches.sort((one, other) => one.key - other.key), taken };
}

function keyAt(
  instrument: Instrument,
  parameter: number,
  offsetOf: (header: number) => number,
): number | undefined {
  const value = instrument.keyNumber(parameter);
  if (!(value >= 0 && value <= 127)) return undefined;
  const offset = offsetOf(instrument.headerOfParameter(parameter));
  return Math.max(0, Math.min(127, Math.trunc(value) + offset));
}

function switchLabel(instrument: Instrument, parameter: number): string {
  const label = instrument.effective(instrument.headerOfParameter(parameter), Parameter.sw_label);
  return label >= 0 ? instrument.valueText(label).trim() : '';
}

/** The keys of a range of which one end has just been met; none where the other end is not set. */
function keysBetween(
  instrument: Instrument,
  parameter: number,
  { low, high }: { low: number; high: number },
  offsetOf: (header: number) => number,
): number[] {
  const header = instrument.headerOfParameter(parameter);
  const [first, last] = [low, high].map((name) => {
    const end = instrument.effective(header, name);
    return end >= 0 ? keyAt(instrument, end, offsetOf) : undefined;
  });
  if (first === undefined || last === undefined) return [];
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, step) => first + step);
}
