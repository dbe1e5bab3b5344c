import { editedText } from '../../model/editing/changedInstrument';
import type { Instrument } from '../../model/instrument';
import type { EntrySample, Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import { commonFolder, isAbsolutePath } from '../../model/paths';
import type { ExampleSlot } from './examples';
import type { FoundCopy } from './repeatExamples';
import type { SourceSection } from './sourceSections';
import type { Template } from './template';

/** A template whose list of samples, where it has one, holds those of the source in the place of those of its examples. */
export async function withSampleList(
  notation: Notation,
  read: Template['read'],
  template: Instrument,
  slots: readonly ExampleSlot[],
  sections: readonly SourceSection[],
): Promise<{ template: Instrument; notes: ConversionNote[] }> {
  if (!notation.samplePlaces) return { template, notes: [] };
  const examples = new Set(slots.flatMap(({ regions }) => regions.map(({ header }) => header)));
  const { edits, notes } = notation.samplePlaces.relist(template, examples, listedSamples(sections));
  if (edits.length === 0) return { template, notes };
  return { template: await read(editedText(template.sources[0].text, edits)), notes };
}

/** The samples of a source in the order of their use, with what all regions of each have in common. */
function listedSamples(sections: readonly SourceSection[]): EntrySample[] {
  const samples = new Map<string, Map<string, string>>();
  for (const { regions } of sections) {
    for (const { values } of regions) {
      const path = values.get('sample');
      if (path === undefined || path === '') continue;
      const known = samples.get(path);
      if (!known) samples.set(path, new Map(values));
      else for (const [name, value] of known) if (values.get(name) !== value) known.delete(name);
    }
  }
  return [...samples].map(([path, values]) => ({ path, values }));
}

/** A document in which what names a folder of samples around copies names that of theirs, the outermost first. */
export async function withFolders(
  notation: Notation,
  read: Template['read'],
  repeated: Instrument,
  copies: readonly FoundCopy[],
): Promise<Instrument> {
  const { samplePlaces } = notation;
  if (!samplePlaces) return repeated;
  let document = repeated;
  for (const headers of foldersByDepth(document, samplePlaces.folderAt, copies)) {
    const edits = [...headers].flatMap(([header, paths]) =>
      samplePlaces.setFolder(document, header, commonFolder(paths)),
    );
    if (edits.length > 0) document = await read(editedText(document.sources[0].text, edits));
  }
  return document;
}

/** The headers that name folders, −1 for what is around them all, by how deep they stand, with the paths of all samples in them. */
function foldersByDepth(
  document: Instrument,
  folderAt: (instrument: Instrument, header: number) => string | undefined,
  copies: readonly FoundCopy[],
): Map<number, string[]>[] {
  const pathsIn = new Map<number, string[]>();
  const copied = new Map(copies.map(({ header, source }) => [header, source?.values.get('sample')]));
  const fixed = new Set<number>();
  for (const region of document.regions) {
    const path = copied.get(region);
    const isFree = copied.has(region) && !(path !== undefined && isAbsolutePath(path));
    for (let at = region; ; at = document.parent(at)) {
      if (!isFree) fixed.add(at);
      else if (path !== undefined && path !== '' && !path.startsWith('*')) {
        const paths = pathsIn.get(at);
        if (paths) paths.push(path);
        else pathsIn.set(at, [path]);
      }
      if (at < 0) break;
    }
  }
  const byDepth: Map<number, string[]>[] = [];
  for (const [header, paths] of pathsIn) {
    if (fixed.has(header) || folderAt(document, header) === undefined) continue;
    let depth = 0;
    for (let at = header; at >= 0; at = document.parent(at)) depth++;
    byDepth[depth] ??= new Map();
    byDepth[depth].set(header, paths);
  }
  return byDepth.filter((one) => one !== undefined);
}
