import type { Finding } from '../model/finding';
import type { Instrument } from '../model/instrument';
import { visibleText } from '../model/text/visibleText';

/** Something that was found wrong with a region. */
export interface RegionFinding {
  /** The region as a header number of its instrument. */
  header: number;
  severity: 'error' | 'warning' | 'information';
  message: string;
}

/** The map shows these in their place by signs of their own. */
const shownAsPlaces: ReadonlySet<string> = new Set(['key-gap', 'velocity-gap', 'range-overlap']);

/**
 * What was found wrong with the regions of an instrument, in whichever of its files they stand, in the order of the findings.
 * What is wrong with a group header is told of the first region that stands under it; hints are left out. Findings of
 * a file are those of the source that `sourceOf` gives, and of none where it is `undefined`.
 */
export function regionFindings(
  instrument: Instrument,
  findings: readonly Finding[],
  sourceOf: (source: number) => number | undefined = (source) => source,
): RegionFinding[] {
  const spans = new Map<number, RegionSpan[]>();
  for (const header of instrument.regions) {
    const { source, start, end } = instrument.bodySpan(header);
    const known = spans.get(source);
    if (known) known.push({ header, start, end });
    else spans.set(source, [{ header, start, end }]);
  }
  for (const regions of spans.values()) regions.sort((one, other) => one.start - other.start);
  return findings.flatMap(({ code, severity, message, source, start }) => {
    if (severity === 'hint' || shownAsPlaces.has(code)) return [];
    const inFile = sourceOf(source);
    const region = inFile === undefined ? undefined : regionAt(spans.get(inFile) ?? [], start);
    return region ? [{ header: region.header, severity, message: visibleText(message) }] : [];
  });
}

interface RegionSpan {
  header: number;
  start: number;
  end: number;
}

/** The region that an offset is in, else the first one after it. */
function regionAt(regions: readonly RegionSpan[], offset: number): RegionSpan | undefined {
  const at = lastBefore(regions, offset);
  const before = regions.at(Math.max(at, 0));
  return at >= 0 && before && offset <= before.end ? before : regions[at + 1];
}

/** The position of the last region that starts at or before an offset, by halving; −1 where none does. */
function lastBefore(regions: readonly RegionSpan[], offset: number): number {
  let low = 0;
  let high = regions.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (regions[middle].start <= offset) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
