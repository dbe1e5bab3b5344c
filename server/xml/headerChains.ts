import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import type { Chain } from '../model/writing/writingOrder';
import { chainOf, passingKinds } from '../model/writing/writingOrder';

/** 0 to 2 for global, master and group, 3 for a region, −1 for headers that inherit nothing. */
export function chainLevel(instrument: Instrument, header: number): number {
  const kind = instrument.kind(header);
  if (kind === HeaderKind.region) return passingKinds.length;
  return passingKinds.indexOf(kind as (typeof passingKinds)[number]);
}

/** For each header the chain of the first one from there on that inherits; `undefined` behind the last. */
export function nextChains(instrument: Instrument): (Chain | undefined)[] {
  const { count } = instrument.headers;
  const chains = new Array<Chain | undefined>(count + 1);
  for (let header = count - 1; header >= 0; header--) {
    const next = chains[header + 1];
    // Mostly a header inherits from the same ones as that behind it.
    const isSame =
      header + 1 < count &&
      chainLevel(instrument, header + 1) >= 0 &&
      instrument.parent(header) === instrument.parent(header + 1);
    chains[header] = chainLevel(instrument, header) < 0 || isSame ? next : chainOf(instrument, header);
  }
  return chains;
}
