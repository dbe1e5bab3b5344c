import { joinPath } from '../../model/paths';
import type { ReadDocument } from '../readDocument';
import { mostListed } from './symbols';

/** A path in the text and the file that it leads to. */
export interface FileLink {
  start: number;
  end: number;
  /** Absolute, with `/`. */
  path: string;
}

/**
 * The includes and samples of a document that lead to files which are there, the first {@link mostListed}. Never waits: samples not
 * looked at yet are left out.
 */
export function fileLinks({ instrument, folder, samples }: ReadDocument): FileLink[] {
  if (folder === undefined) return [];
  const links: FileLink[] = [];
  for (const { kind, source, nameStart, nameEnd, value } of instrument.directives) {
    if (kind === 'include' && source === 0 && instrument.sourceOf(value))
      links.push({ start: nameStart, end: nameEnd, path: value });
  }
  const lookup = samples.lookup(folder);
  let last = -1;
  for (const region of instrument.regions) {
    const parameter = instrument.sampleParameter[region];
    if (parameter < 0 || parameter === last) continue;
    last = parameter;
    const sample = instrument.samplePath(region) as string;
    if (sample.startsWith('*')) continue;
    if (links.length >= mostListed) break;
    const { source, start, end } = instrument.valueSpan(parameter);
    if (source !== 0) continue;
    const state = lookup.state(sample);
    if (state.kind === 'file') links.push({ start, end, path: joinPath(folder, sample) });
    else if (state.kind === 'otherCase') links.push({ start, end, path: joinPath(folder, state.actual) });
  }
  return links;
}
