import { HeaderKind } from '../headerKinds';
import type { Instrument } from '../instrument';

/**
 * What is different first in the second of two instruments that stand in the same folder, as the end of a sentence: values in
 * force in regions, or the headers beside the regions and what these inherit from. `undefined` where nothing is.
 */
export function regionDifference(first: Instrument, second: Instrument): string | undefined {
  const count = first.regions.length;
  if (count !== second.regions.length)
    return `there would be ${second.regions.length} regions in place of ${count}`;
  for (let at = 0; at < count; at++) {
    const a = first.regions[at];
    const b = second.regions[at];
    const valueDifference = firstDifference(valuesInForce(first, a), valuesInForce(second, b));
    const difference =
      valueDifference ??
      (first.samplePath(a) !== second.samplePath(b)
        ? `the sample ${second.samplePath(b) ?? 'none'} in place of ${first.samplePath(a) ?? 'none'}`
        : first.control(a).keyOffset !== second.control(b).keyOffset
          ? 'its keys moved by another offset'
          : undefined);
    if (difference !== undefined) return `region ${at + 1} would have ${difference}`;
  }
  if (otherHeaders(first) === otherHeaders(second)) return undefined;
  return 'headers beside the regions would have other values';
}

function firstDifference(
  wanted: ReadonlyMap<string, string>,
  found: ReadonlyMap<string, string>,
): string | undefined {
  for (const [name, value] of wanted) {
    const other = found.get(name);
    if (other === undefined) return `no ${name} in place of ${value}`;
    if (other !== value) return `${name} ${other} in place of ${value}`;
  }
  for (const [name, value] of found) if (!wanted.has(name)) return `${name} ${value} in place of none`;
  return undefined;
}

function valuesInForce(instrument: Instrument, header: number): Map<string, string> {
  const { names } = instrument;
  return new Map(
    instrument
      .effectiveParameters(header)
      .map(({ name, parameter }) => [names.text(name), instrument.valueText(parameter)]),
  );
}

function otherHeaders(instrument: Instrument): string {
  const listed: string[] = [];
  for (let header = 0; header < instrument.headers.count; header++) {
    const kind = instrument.kind(header);
    if (kind === HeaderKind.region || kind === HeaderKind.unknown) continue;
    if (kind === HeaderKind.global || kind === HeaderKind.master || kind === HeaderKind.group) continue;
    const values = [...valuesInForce(instrument, header)].sort();
    listed.push(`<${instrument.headerName(header)}>${JSON.stringify(values)}`);
  }
  return listed.join('\n');
}
