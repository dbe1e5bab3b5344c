import { Parameter } from '../model/parameterNames';
import { joinPath } from '../model/paths';
import type { ReadDocument } from './readDocument';

/** Where something comes from: a file as a whole, or a stretch of one of the instrument's sources. */
export type DefinitionTarget =
  | { kind: 'file'; path: string }
  | { kind: 'text'; source: number; start: number; end: number };

/** What was asked about and where it comes from. */
export interface Definition {
  start: number;
  end: number;
  target: DefinitionTarget;
}

/** Where the sample, include or variable at an offset comes from; `undefined` where there is no such thing or file. */
export async function definitionAt(document: ReadDocument, offset: number): Promise<Definition | undefined> {
  const { instrument, notation, folder, samples } = document;
  const place = notation.placeAt(instrument, offset);
  if (place.kind === 'include') {
    const include = instrument.directives.find(
      ({ kind, source, nameStart, nameEnd }) =>
        kind === 'include' && source === 0 && nameStart <= offset && offset <= nameEnd,
    );
    if (!include || !instrument.sources.some(({ path }) => path === include.value)) return undefined;
    return { start: place.start, end: place.end, target: { kind: 'file', path: include.value } };
  }
  if (place.kind === 'variable') {
    const define = instrument.directives.findLast(
      ({ kind, name, source, start }) =>
        kind === 'define' && name === place.name && (source !== 0 || start <= offset),
    );
    if (!define) return undefined;
    const { source, nameStart, nameEnd } = define;
    return {
      start: place.start,
      end: place.end,
      target: { kind: 'text', source, start: nameStart, end: nameEnd },
    };
  }
  if (place.kind !== 'value' || place.parameter < 0 || folder === undefined) return undefined;
  if (instrument.canonicalName(place.parameter) !== Parameter.sample) return undefined;
  const value = instrument.valueText(place.parameter);
  if (value === '' || value.startsWith('*')) return undefined;
  const path = (instrument.control(place.header).defaultPath + value).replaceAll('\\', '/');
  const state = await samples.fetchState(folder, path);
  if (state.kind !== 'file' && state.kind !== 'otherCase') return undefined;
  const actual = state.kind === 'file' ? path : state.actual;
  return { start: place.start, end: place.end, target: { kind: 'file', path: joinPath(folder, actual) } };
}
