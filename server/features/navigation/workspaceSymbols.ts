import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import { Parameter } from '../../model/parameterNames';
import { joinPath, nameOf } from '../../model/paths';
import { variablePlaces } from '../../model/variables/variableUses';

/** Something of an instrument's main file that can be found by its name. */
export interface NamedPlace {
  name: string;
  kind: 'instrument' | 'header' | 'sample' | 'variable';
  start: number;
  end: number;
}

const labels: readonly (readonly [HeaderKind, number])[] = [
  [HeaderKind.group, Parameter.group_label],
  [HeaderKind.master, Parameter.master_label],
  [HeaderKind.global, Parameter.global_label],
];

/**
 * What can be found in an instrument by name: itself by its file's name, labelled groups, masters and globals, each
 * sample where it is named first, each variable where it is defined. What stands in included files is left out.
 */
export function namedPlaces(instrument: Instrument): NamedPlace[] {
  const places: NamedPlace[] = [];
  const path = instrument.sources[0]?.path ?? '';
  if (instrument.headers.count > 0) places.push({ name: nameOf(path), kind: 'instrument', start: 0, end: 0 });
  for (const { kind, name, source, start, end } of variablePlaces(instrument))
    if (kind === 'define' && source === 0) places.push({ name: `$${name}`, kind: 'variable', start, end });
  for (let header = 0; header < instrument.headers.count; header++) {
    const label = labels.find(([kind]) => kind === instrument.kind(header))?.[1];
    const parameter = label === undefined ? -1 : instrument.own(header, label);
    if (parameter < 0 || instrument.headerSource(header) !== 0) continue;
    const { start, end } = instrument.headerSpan(header);
    places.push({ name: instrument.valueText(parameter), kind: 'header', start, end });
  }
  const seen = new Set<string>();
  let last = -1;
  for (const region of instrument.regions) {
    const parameter = instrument.sampleParameter[region];
    if (parameter < 0 || parameter === last) continue;
    last = parameter;
    const sample = instrument.samplePath(region) as string;
    const { source, start, end } = instrument.valueSpan(parameter);
    if (source !== 0 || sample === '' || sample.startsWith('*')) continue;
    const tidy = joinPath('', sample);
    if (seen.has(tidy)) continue;
    seen.add(tidy);
    places.push({ name: nameOf(tidy), kind: 'sample', start, end });
  }
  return places.filter(({ name }) => name !== '');
}

/** Whether the letters of a query stand in a name in their order, with others between them; letter case does not count. */
export function matchesQuery(name: string, query: string): boolean {
  const lower = name.toLowerCase();
  let at = 0;
  for (const letter of query.toLowerCase()) {
    if (letter === ' ') continue;
    at = lower.indexOf(letter, at) + 1;
    if (at === 0) return false;
  }
  return true;
}
