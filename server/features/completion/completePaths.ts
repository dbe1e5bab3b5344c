import { isInstrumentFileName, isSampleFileName } from '../../model/fileNames';
import type { Instrument } from '../../model/instrument';
import { folderOf, isAbsolutePath, joinPath } from '../../model/paths';
import type { ReadDocument } from '../readDocument';
import { mainSource } from '../readDocument';
import type { CompletionOffer } from './completionOffer';

/** A path that is being written, up to the cursor and on to the end of its text. */
interface PathPlace {
  start: number;
  end: number;
  offset: number;
}

/** Sounds that players make without a file (public documentation of the open SFZ format). */
const generators = ['*sine', '*saw', '*square', '*triangle', '*tri', '*noise', '*silence'] as const;

/** Audio files and folders that a sample's path can go on with; those that no region uses come first. */
export async function sampleOffers(
  document: ReadDocument,
  header: number,
  place: PathPlace,
): Promise<CompletionOffer[]> {
  const folder = document.notation.sampleFolder;
  const prefix =
    folder !== undefined ? `${folder}/` : header < 0 ? '' : document.instrument.control(header).defaultPath;
  const used = usedPaths(document.instrument);
  const offers = await pathOffers(document, prefix, place, (name, path) =>
    isSampleFileName(name) ? (used.has(path) ? 'late' : 'early') : 'no',
  );
  const typed = mainSource(document).text.slice(place.start, place.offset);
  if (typed === '' || typed.startsWith('*')) {
    offers.push(
      ...generators.map(
        (label): CompletionOffer => ({
          kind: 'generator',
          label,
          start: place.start,
          end: place.end,
          insert: [label, ''],
          detail: 'made by the player, without a file',
          rank: 8,
        }),
      ),
    );
  }
  return offers;
}

/** Folders that the prefix of sample paths can go on with. */
export function folderOffers(document: ReadDocument, place: PathPlace): Promise<CompletionOffer[]> {
  return pathOffers(document, '', place, () => 'no');
}

/** Files and folders that the path of an include can go on with: texts of instruments first, audio never. */
export function includeOffers(document: ReadDocument, place: PathPlace): Promise<CompletionOffer[]> {
  const own = document.instrument.sources[0]?.path;
  return pathOffers(document, '', place, (name, path) => {
    if (isSampleFileName(name) || (document.folder !== undefined && joinPath(document.folder, path) === own))
      return 'no';
    return isInstrumentFileName(name) ? 'early' : 'late';
  });
}

/**
 * What stands in the folder that the typed path leads to. `prefix` is put before the path; it may end within a name.
 * `choose` is asked of each file by its name and its path from the document's folder.
 */
async function pathOffers(
  document: ReadDocument,
  prefix: string,
  { start, end, offset }: PathPlace,
  choose: (name: string, path: string) => 'early' | 'late' | 'no',
): Promise<CompletionOffer[]> {
  const { folder, samples, notation } = document;
  if (folder === undefined) return [];
  const typed = mainSource(document).text.slice(start, offset);
  const slash = Math.max(typed.lastIndexOf('/'), typed.lastIndexOf('\\')) + 1;
  const written = prefix + typed.slice(0, slash);
  const separator = written.includes('\\') && !written.includes('/') ? '\\' : '/';
  const before = written.replaceAll('\\', '/');
  const beginning = before.slice(before.lastIndexOf('/') + 1);
  const inner = folderOf(before);
  const names = await samples.folders.fetchNames(joinPath(folder, inner === '' ? '.' : inner));
  if (!names || (isAbsolutePath(before) && inner === '')) return [];
  const offers: CompletionOffer[] = [];
  for (const [name, kind] of names) {
    if (kind === 'special' || name.startsWith('.') || !name.startsWith(beginning) || name === beginning)
      continue;
    const path = joinPath('', inner === '' ? name : `${inner}/${name}`);
    const choice = kind === 'folder' ? 'early' : choose(name, path);
    if (choice === 'no') continue;
    const rest = name.slice(beginning.length);
    offers.push({
      kind,
      label: rest + (kind === 'folder' ? separator : ''),
      start: start + slash,
      end,
      insert: [notation.spelling.value(rest) + (kind === 'folder' ? separator : ''), ''],
      ...(choice === 'late' && isSampleFileName(name) && { remark: 'used already' }),
      rank: kind === 'folder' ? 2 : choice === 'early' ? 1 : 3,
      goesOn: kind === 'folder',
    });
  }
  return offers;
}

function usedPaths(instrument: Instrument): Set<string> {
  const used = new Set<string>();
  let last = -1;
  for (const region of instrument.regions) {
    const parameter = instrument.sampleParameter[region];
    if (parameter < 0 || parameter === last) continue;
    last = parameter;
    used.add(joinPath('', instrument.samplePath(region) as string));
  }
  return used;
}
