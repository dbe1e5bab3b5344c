import type { Instrument } from '../model/instrument';
import { noteNameOf } from '../model/keys';
import { nameOf } from '../model/paths';

/** How a message speaks of a region: by the file name of its sample, else by its line. */
export function regionTitle(instrument: Instrument, region: number): string {
  const path = instrument.samplePath(region);
  return path === undefined || path === ''
    ? `the region in line ${lineOf(instrument, region)}`
    : `"${nameOf(path)}"`;
}

/** The line of a region's header, counted from 1. */
export function lineOf(instrument: Instrument, region: number): number {
  const { source, start } = instrument.headerSpan(region);
  return instrument.sources[source]?.positionAt(start).line ?? 1;
}

/** Keys for a message: `key 60 (C4)` or `keys 60 (C4) to 64 (E4)`. */
export function keysText(low: number, high: number): string {
  const one = (key: number) => `${key} (${noteNameOf(key)})`;
  return low === high ? `key ${one(low)}` : `keys ${one(low)} to ${one(high)}`;
}

/** Velocities for a message: `velocity 64` or `velocities 64 to 80`. */
export function velocitiesText(low: number, high: number): string {
  return low === high ? `velocity ${low}` : `velocities ${low} to ${high}`;
}
