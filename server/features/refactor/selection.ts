import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { SelectedDocument } from './refactoring';

/** The headers of the document that a selection touches, in the order of the text; the one around a cursor. */
export function selectedHeaders({ instrument, start, end }: SelectedDocument): number[] {
  const first = instrument.headerAt(0, start);
  const last = instrument.headerAt(0, end);
  const headers: number[] = [];
  for (let header = Math.max(0, first); header <= last; header++) {
    if (instrument.headerSource(header) !== 0) continue;
    // A selection that begins behind a header, or ends where the next begins, does not touch it.
    const { start: from, end: to } = instrument.bodySpan(header);
    if (start === end || (to > start && from < end)) headers.push(header);
  }
  return headers;
}

/** The group that the selection is in, its header or one of its regions; −1 where it is in none, or goes beyond. */
export function selectedGroup(selected: SelectedDocument): number {
  const { instrument } = selected;
  const groups = new Set(selectedHeaders(selected).map((header) => groupOf(instrument, header)));
  const [group = -1] = groups;
  return groups.size === 1 ? group : -1;
}

function groupOf(instrument: Instrument, header: number): number {
  const group = instrument.kind(header) === HeaderKind.region ? instrument.parent(header) : header;
  return group >= 0 && instrument.kind(group) === HeaderKind.group ? group : -1;
}

/** The regions right inside a header, in the order of the text. */
export function regionsIn(instrument: Instrument, header: number): number[] {
  const regions: number[] = [];
  for (const region of instrument.regions) if (instrument.parent(region) === header) regions.push(region);
  return regions;
}

/** Whether a header and all that it sets stand in the document itself. */
export function isWhollyHere(instrument: Instrument, header: number): boolean {
  return instrument.headerSource(header) === 0 && instrument.isInOneFile(header);
}

/** Regions that the selection touches, one behind the other in one scope; empty where it touches anything else. */
export function selectedRun(selected: SelectedDocument): number[] {
  const { instrument } = selected;
  const headers = selectedHeaders(selected);
  const [first = -1] = headers;
  if (first < 0 || selected.start === selected.end) return [];
  const parent = instrument.parent(first);
  const isRun = headers.every(
    (header, at) =>
      header === first + at &&
      instrument.kind(header) === HeaderKind.region &&
      instrument.parent(header) === parent &&
      isWhollyHere(instrument, header),
  );
  return isRun ? headers : [];
}

/** The regions of the scope that the selection is in: those of a group, or those around that are in none. */
export function scopeRegions(selected: SelectedDocument): number[] {
  const { instrument } = selected;
  const [first = -1, ...more] = selectedHeaders(selected);
  if (first < 0) return [];
  const scope = scopeOf(instrument, first);
  return more.every((header) => scopeOf(instrument, header) === scope) ? regionsIn(instrument, scope) : [];
}

function scopeOf(instrument: Instrument, header: number): number {
  return instrument.kind(header) === HeaderKind.region ? instrument.parent(header) : header;
}
