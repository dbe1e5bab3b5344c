import type { Instrument } from '../../model/instrument';
import type { StepValue } from './steps';
import type { OffElement } from './switchedOff';

/** The keys of regions that play one key each, in their order. */
export interface OrderedKeys {
  /** By header, as they are counted without the elements that are passed over. */
  values: ReadonlyMap<number, readonly StepValue[]>;
  /** Regions without a sample, which take up a key alone, by where their tags start. */
  passed: ReadonlyMap<number, OffElement>;
}

const greatestKey = 127;

/** Gives each region the next key after that of the region before it, from the low key of an element around them on. */
export function orderedKeys(instrument: Instrument, isPassing: boolean): OrderedKeys {
  const { names } = instrument;
  const idOf = (name: string) => names.canonical(names.idOf(name));
  const [low, root] = [idOf('lokey'), idOf('pitch_keycenter')];
  const next = new Map<number, number>();
  const values = new Map<number, StepValue[]>();
  const passed = new Map<number, OffElement>();
  for (const region of instrument.regions) {
    const place = instrument.effective(region, low);
    if (place < 0 || instrument.own(region, low) >= 0) continue;
    const key = next.get(place) ?? instrument.number(place);
    next.set(place, key + 1);
    if (!(key <= greatestKey)) continue;
    if (isPassing && instrument.samplePath(region) === undefined) {
      const { start, end } = instrument.headerSpan(region);
      const rule = { element: '', at: '.', words: [] };
      passed.set(start, { rule, value: '', start, end });
      continue;
    }
    const all: StepValue[] = [
      { parameter: 'lokey', value: key },
      { parameter: 'hikey', value: key },
    ];
    if (instrument.effective(region, root) < 0) all.push({ parameter: 'pitch_keycenter', value: key });
    values.set(region - passed.size, all);
  }
  return { values, passed };
}
