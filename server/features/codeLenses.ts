import { HeaderKind } from '../model/headerKinds';
import { keysOff } from '../model/inForce/headerRanges';
import type { Instrument } from '../model/instrument';
import { counted } from '../model/wording/counted';
import { noteNamesText } from '../model/wording/rangeWords';
import { groupNames } from '../trade/names/groupNames';

/** What stands above a header that holds regions: how many they are and what they cover. */
export interface HeaderSummary {
  /** The header with its own opcodes and all regions of it that stand in the document. */
  start: number;
  end: number;
  /** Where its tag ends. */
  tagEnd: number;
  title: string;
}

interface Sum {
  count: number;
  lowKey: number;
  highKey: number;
  /** Different velocity ranges. */
  layers: Set<number>;
  /** Where the last of its regions in the document ends. */
  end: number;
}

/** The summaries of the global, master and group headers of the document that regions inherit from. */
export function headerSummaries(instrument: Instrument): HeaderSummary[] {
  const sums = new Map<number, Sum>();
  for (const region of instrument.regions) {
    for (let at = instrument.parent(region); at >= 0; at = instrument.parent(at)) {
      add(instrument, region, sums, at);
    }
  }
  const summaries: HeaderSummary[] = [];
  for (const [header, sum] of [...sums].sort(([a], [b]) => a - b)) {
    const { source, start, end: tagEnd } = instrument.headerSpan(header);
    const kind = instrument.kind(header);
    if (source !== 0 || kind < HeaderKind.global || kind > HeaderKind.group) continue;
    summaries.push({
      start,
      end: Math.max(instrument.bodySpan(header).end, sum.end),
      tagEnd,
      title: [groupNames(instrument).nameOf(header), titleOf(sum)].filter(Boolean).join(': '),
    });
  }
  return summaries;
}

/** A region with its own opcodes, to be played by itself. */
export interface LensRegion {
  start: number;
  end: number;
  /** Where its tag ends. */
  tagEnd: number;
}

/** Regions that get a line of their own above them at the most (our choice). */
const mostPlayed = 1000;

/**
 * The regions of the document that stand on several lines. Those of one line would be twice as long with something above
 * them, and of more than a thousand nobody looks at each; their hovers play them.
 */
export function regionsToPlay(instrument: Instrument): LensRegion[] {
  const [document] = instrument.sources;
  const found: LensRegion[] = [];
  for (const region of instrument.regions) {
    const { source, start, end: tagEnd } = instrument.headerSpan(region);
    const { end } = instrument.bodySpan(region);
    if (source !== 0 || document.positionAt(start).line === document.positionAt(end).line) continue;
    if (found.length === mostPlayed) return [];
    found.push({ start, end, tagEnd });
  }
  return found;
}

function add(instrument: Instrument, region: number, sums: Map<number, Sum>, header: number): void {
  let sum = sums.get(header);
  if (!sum) {
    sum = { count: 0, lowKey: 128, highKey: -1, layers: new Set(), end: 0 };
    sums.set(header, sum);
  }
  sum.count++;
  const body = instrument.bodySpan(region);
  if (body.source === 0) sum.end = Math.max(sum.end, body.end);
  const low = instrument.lowKey[region];
  const high = instrument.highKey[region];
  if (low !== keysOff && high !== keysOff) {
    sum.lowKey = Math.min(sum.lowKey, low);
    sum.highKey = Math.max(sum.highKey, high);
  }
  sum.layers.add(Math.max(1, instrument.lowVelocity[region]) * 128 + instrument.highVelocity[region]);
}

function titleOf({ count, lowKey, highKey, layers }: Sum): string {
  const regions = counted(count, 'region');
  const keys = highKey < 0 ? 'no keys' : noteNamesText(lowKey, highKey);
  const velocities = layers.size > 1 ? `, ${layers.size} velocity ranges` : '';
  return `${regions}, ${keys}${velocities}`;
}
