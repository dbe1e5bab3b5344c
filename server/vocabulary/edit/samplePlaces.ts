import { replacing } from '../../model/editing/edits';
import type { Instrument } from '../../model/instrument';
import type { SamplePlaces } from '../../model/notation';
import { joinPath, relativePath } from '../../model/paths';
import { spanIn } from '../../model/text/span';
import { decodeXmlAttribute, decodeXmlText } from '../../xml/scan/references';
import type { PlacePath } from '../places';
import { folderPlaces, parsePlace } from '../places';
import { pathFormsOf } from '../read/usedSamples';
import type { Vocabulary } from '../vocabulary';
import { elementIn, headerText } from './editHeader';
import { folderAround } from './outerFolder';
import { relistSamples } from './sampleEntries';
import { encodedElementText, encodedFor } from './styleElement';
import { valueAt } from './styleTree';

/** How XML in a vocabulary names samples beside the regions that play them. */
export function samplePlacesIn(vocabulary: Vocabulary): SamplePlaces {
  const form = pathFormsOf(vocabulary).find(({ under }) => under !== undefined);
  const places = form?.under === undefined ? [] : folderPlaces(form.under);
  const paths = places.map(parsePlace);
  return {
    folderAt(instrument, header) {
      if (places.length === 0) return undefined;
      const found = elementTextOf(instrument, vocabulary, header);
      const folder = found && folderIn(found.text, paths)?.folder;
      // What holds for the whole text is in the form already, and is not read again.
      return folder === undefined || joinPath('', folder) === form?.folder ? undefined : folder;
    },
    setFolder(instrument, header, folder) {
      const found = elementTextOf(instrument, vocabulary, header);
      const there = found && folderIn(found.text, paths);
      if (!there || joinPath('', there.folder) === form?.folder) return [];
      const { source } = found;
      const text = instrument.sources[source]?.text ?? '';
      const outer = folderAround(
        form?.folder,
        places.slice(0, there.place),
        text,
        vocabulary,
        found.start + there.start,
      );
      const newText = spelled(relativeFolder(outer, folder), there.folder);
      const encoded =
        there.quote === undefined ? encodedElementText(newText) : encodedFor(there.quote, newText);
      return [replacing(spanIn(source, found.start + there.start, found.start + there.end), encoded)];
    },
    relist: (instrument, examples, samples) => relistSamples(instrument, vocabulary, examples, samples),
  };
}

/** The element of a header; of none, the outermost one. */
function elementTextOf(instrument: Instrument, vocabulary: Vocabulary, header: number) {
  if (header >= 0) return headerText(instrument, vocabulary, header);
  const text = instrument.sources[0]?.text ?? '';
  return { source: 0, start: 0, text };
}

interface FolderText {
  /** Its position among the places that name folders. */
  place: number;
  folder: string;
  start: number;
  end: number;
  /** The quote around it; `undefined` for the text of an element. */
  quote: string | undefined;
}

/** The folder that an element names itself. */
function folderIn(text: string, paths: readonly (PlacePath | undefined)[]): FolderText | undefined {
  const within = elementIn({ text });
  if (!within) return undefined;
  for (const [place, path] of paths.entries()) {
    const found = path && valueAt(text, within.element, path);
    if (!found) continue;
    const { start, end, attribute } = found;
    const written = text.slice(start, end);
    const folder = attribute ? decodeXmlAttribute(written) : decodeXmlText(written);
    if (folder.trim() !== '') return { place, folder, start, end, quote: attribute?.quote };
  }
  return undefined;
}

/** The way from one folder to another; `.` where they are the same. */
function relativeFolder(outer: string, folder: string): string {
  const mark = 'x';
  const way = relativePath(outer, joinPath(folder, mark));
  return way === mark ? '.' : way.slice(0, -mark.length - 1);
}

/** A folder with the separators of another, and a separator at its end where that has one. */
function spelled(folder: string, like: string): string {
  const separator = like.includes('\\') && !like.includes('/') ? '\\' : '/';
  const end = /[\\/]\s*$/.test(like) ? separator : '';
  return folder.replaceAll('/', separator) + end;
}
