import type { Instrument } from '../instrument';
import type { ConversionNote } from '../notes';
import { parameterAbout } from './lineNotes';

/**
 * Finds where notes on the conversion of an instrument show in what was written, which is given as it was read again: at
 * the value that a note is about, where the regions are the same, else at the region. Notes that have a place keep it.
 */
export function placeNotes(
  instrument: Instrument,
  written: Instrument,
  notes: readonly ConversionNote[],
): ConversionNote[] {
  if (instrument.regions.length !== written.regions.length || instrument.regions.length === 0)
    return [...notes];
  const firstRegion = firstRegions(instrument);
  return notes.map((note) => {
    if (note.written) return note;
    const header = instrument.headerAt(note.source, note.start);
    const number = firstRegion[Math.max(0, header)] ?? 0;
    const region = written.regions[number];
    if (region === undefined) return note;
    const about = parameterAbout(instrument, note.source, note.start, note.end);
    const name = about < 0 ? -1 : instrument.canonicalName(about);
    const parameter = name < 0 ? -1 : written.effective(region, name);
    const { source, start, end } =
      parameter < 0 ? written.headerSpan(region) : written.parameterSpan(parameter);
    return source === 0 ? { ...note, written: { start, end } } : note;
  });
}

/** By header, the number (among the regions) of the first region that inherits from it, or else that comes behind it. */
export function firstRegions(instrument: Instrument): Int32Array {
  const { headers, regions } = instrument;
  const first = new Int32Array(headers.count).fill(-1);
  for (let number = 0; number < regions.length; number++) {
    for (let at = regions[number]; at >= 0 && first[at] === -1; at = instrument.parent(at))
      first[at] = number;
  }
  let next = regions.length - 1;
  for (let header = headers.count - 1; header >= 0; header--) {
    if (first[header] < 0) first[header] = next;
    else if (instrument.regionNumber(header) >= 0) next = first[header];
  }
  return first;
}
