import type { Instrument } from '../../model/instrument';
import { noteNameOf } from '../../model/keys';
import { nameOf } from '../../model/paths';

/** How a message speaks of a region: by the file name of its sample, else as the region at its place. */
export function regionTitle(instrument: Instrument, region: number): string {
  const path = instrument.samplePath(region);
  return path === undefined || path === ''
    ? `the region in ${placeText(instrument, region)}`
    : `"${nameOf(path)}"`;
}

/** Where a region stands, for a message: `line 3`, or `line 3 of part.sfz` in a file other than the main one. */
export function placeText(instrument: Instrument, region: number): string {
  const { source, start } = instrument.headerSpan(region);
  const file = instrument.sources[source];
  const line = `line ${file?.positionAt(start).line ?? 1}`;
  return file && source > 0 ? `${line} of ${nameOf(file.path)}` : line;
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
