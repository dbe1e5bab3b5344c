import { HeaderKind } from './headerKinds';
import type { Instrument } from './instrument';

/**
 * Whether two instruments that stand in the same folder have the same values in force in all regions, and the same
 * headers beside the regions and what these inherit from.
 */
export function sameRegions(first: Instrument, second: Instrument): boolean {
  if (first.regions.length !== second.regions.length) return false;
  for (let at = 0; at < first.regions.length; at++) {
    const a = first.regions[at] as number;
    const b = second.regions[at] as number;
    if (first.control(a).keyOffset !== second.control(b).keyOffset) return false;
    if (first.samplePath(a) !== second.samplePath(b)) return false;
    if (valuesInForce(first, a) !== valuesInForce(second, b)) return false;
  }
  return otherHeaders(first) === otherHeaders(second);
}

function valuesInForce(instrument: Instrument, header: number): string {
  return instrument
    .effectiveParameters(header)
    .map(({ name, parameter }) => `${name}=${JSON.stringify(instrument.valueText(parameter))}`)
    .sort()
    .join();
}

function otherHeaders(instrument: Instrument): string {
  const listed: string[] = [];
  for (let header = 0; header < instrument.headers.count; header++) {
    const kind = instrument.kind(header);
    if (kind === HeaderKind.region || kind === HeaderKind.unknown) continue;
    if (kind === HeaderKind.global || kind === HeaderKind.master || kind === HeaderKind.group) continue;
    listed.push(`<${instrument.headerName(header)}>${valuesInForce(instrument, header)}`);
  }
  return listed.join('\n');
}
