import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { InstrumentBuilder } from '../../model/instrumentBuilder';
import type { SampleFactsLookup } from '../../model/notation';
import type { ValueSurroundings } from '../forms/valueSurroundings';
import type { ReadTarget } from './targets';

/** A parameter whose number has yet to be scaled by the sample or by other parameters. */
export interface UnscaledParameter {
  parameter: number;
  target: ReadTarget;
}

/**
 * Scales the numbers of parameters that go by the sample rate or the length of the sample, or that count from another parameter.
 * A value of a group goes by the first region in it. `statedRates` are sample rates that the text states, by header.
 */
export function scaleBySurroundings(
  instrument: Instrument,
  builder: InstrumentBuilder,
  unscaled: readonly UnscaledParameter[],
  sampleFacts: SampleFactsLookup | undefined,
  statedRates: ReadonlyMap<number, number> = new Map(),
): void {
  if (unscaled.length === 0) return;
  const names = {
    offset: canonicalOf(instrument, 'offset'),
    loop_start: canonicalOf(instrument, 'loop_start'),
  };
  // What others count from comes first: a loop may start from the offset and be as long as its end says.
  const order: (string | undefined)[] = [undefined, 'offset', 'loop_start'];
  for (const from of order) {
    for (const { parameter, target } of unscaled) {
      const { form, numbers } = target;
      if (form.kind !== 'position' || form.from !== from || !numbers) continue;
      const region = regionOf(instrument, instrument.headerOfParameter(parameter));
      const path =
        (form.unit === 'frames' && !form.atRate) || region < 0 ? undefined : instrument.samplePath(region);
      const facts = path === undefined ? undefined : sampleFacts?.(path);
      const around: ValueSurroundings = {
        parameter: target.parameter,
        sampleRate: facts && facts.sampleRate > 0 ? facts.sampleRate : undefined,
        statedRate: statedRateOf(instrument, region, statedRates),
        frames: facts && facts.frames > 0 ? facts.frames : undefined,
        frameOf: (name) => frameOf(instrument, region, name === 'offset' ? names.offset : names.loop_start),
      };
      const value = numbers.read(instrument.number(parameter), around);
      builder.setNumber(parameter, Number.isNaN(value) ? 0 : value, numbers.assumed?.(around));
    }
  }
}

function statedRateOf(
  instrument: Instrument,
  region: number,
  rates: ReadonlyMap<number, number>,
): number | undefined {
  for (let at = rates.size > 0 ? region : -1; at >= 0; at = instrument.parent(at)) {
    const rate = rates.get(at);
    if (rate !== undefined) return rate;
  }
  return undefined;
}

function canonicalOf({ names }: Instrument, name: string): number {
  return names.canonical(names.idOf(name));
}

/** The region that a header is, or the first one that inherits from it; −1 where there is none. */
function regionOf(instrument: Instrument, header: number): number {
  for (let at = header; at < instrument.headers.count; at++) {
    if (instrument.kind(at) !== HeaderKind.region) continue;
    let around = at;
    while (around >= 0 && around !== header) around = instrument.parent(around);
    return around === header ? at : -1;
  }
  return -1;
}

function frameOf(instrument: Instrument, region: number, name: number): number {
  const parameter = region < 0 ? -1 : instrument.effective(region, name);
  const frame = parameter < 0 ? 0 : instrument.number(parameter);
  return Number.isNaN(frame) ? 0 : Math.max(0, frame);
}
