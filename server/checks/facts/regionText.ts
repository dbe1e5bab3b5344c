import type { Instrument } from '../../model/instrument';
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
