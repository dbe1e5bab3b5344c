import { newFileEndings } from '../../model/fileNames';
import type { Files } from '../../model/files';
import { OutputError } from '../../model/output';
import { endingOf, joinPath } from '../../model/paths';
import { readInstrument } from '../../workspace/analyse';
import { IncludeStore } from '../../workspace/files/includeStore';
import { Reach } from '../../workspace/files/reach';
import { readWholeText } from '../../workspace/files/readWhole';
import { notationOfFile } from '../../workspace/notations/detectedNotation';
import { notations } from '../../workspace/notations/notationOf';
import { SampleStore } from '../../workspace/samples/sampleStore';
import { vocabularyTarget } from '../build/targetOutput';
import type { InstrumentFacts } from '../libraryFile';
import type { LibraryInstrument, LibraryTarget, ResolvedLibrary } from '../libraryInstrument';
import type { PackSource, PackText } from './packSource';

/** Notes of a conversion by what they tell. */
export interface NoteCounts {
  assumed: number;
  approximated: number;
  dropped: number;
}

/**
 * What a build has written of an instrument, to be packed: its texts and fonts in the folders of their targets, its notes and its
 * map. `said` are facts that count before those of the library file. Fails with an {@link OutputError} where a target is not built.
 */
export async function builtSource(
  files: Files,
  library: ResolvedLibrary,
  one: LibraryInstrument,
  said: InstrumentFacts,
): Promise<PackSource & { noteCounts?: NoteCounts }> {
  const { fileName, name } = one;
  const texts: PackText[] = [];
  const others: string[] = [];
  for (const target of one.targets) {
    const path = await builtPath(files, library, one, target);
    if (target.notation === 'sf2') others.push(path);
    else texts.push(await builtText(files, library, target, path));
    if (target.vocabulary !== undefined && !others.includes(target.vocabulary))
      others.push(target.vocabulary);
  }
  const map = joinPath(library.output, `maps/${fileName}.svg`);
  if ((await files.stat(map))?.kind === 'file') others.push(map);
  const notes = await readWholeText(files, joinPath(library.output, `notes/${fileName}.md`));
  const noteCounts = await countsIn(files, joinPath(library.output, `records/${fileName}.json`));
  const facts = { title: name, ...one.facts, ...said };
  return {
    ...{ name: fileName, texts, files: others, facts },
    ...(facts.picture !== undefined && { picture: joinPath(library.folder, facts.picture) }),
    ...(notes.kind === 'text' && { notes: notes.text }),
    ...(noteCounts && { noteCounts }),
  };
}

const endings: Readonly<Record<LibraryTarget['notation'], string>> = {
  sfz: newFileEndings.sfz,
  xml: newFileEndings.xml,
  vocabulary: '.xml',
  sf2: '.sf2',
};

/** The file that a target was built to. */
async function builtPath(
  files: Files,
  { output }: ResolvedLibrary,
  { fileName, targets }: LibraryInstrument,
  { folder: place, notation, template }: LibraryTarget,
): Promise<string> {
  const folder = joinPath(output, place);
  const ending = template === undefined ? endings[notation] : endingOf(template);
  const path = joinPath(folder, fileName + ending);
  if ((await files.stat(path))?.kind === 'file') return path;
  throw new OutputError(
    `${targets.length > 1 ? `its target ${place}` : 'it'} is not built yet; run "zonewright library build" first`,
  );
}

async function builtText(
  files: Files,
  { folder }: ResolvedLibrary,
  { notation: kind, vocabulary = '' }: LibraryTarget,
  path: string,
): Promise<PackText> {
  const whole = await readWholeText(files, path);
  if (whole.kind !== 'text') throw new OutputError(`${path} is no text any more; build it again`);
  const notation =
    kind === 'vocabulary'
      ? await vocabularyTarget(vocabulary, files)
      : notations[kind === 'xml' ? kind : 'sfz'];
  const samples = notation.parameters !== undefined ? { samples: new SampleStore(files) } : {};
  const includes = new IncludeStore(files, undefined, new Reach(files, [folder]));
  const instrument = await readInstrument({ path, text: whole.text, notation, ...samples }, includes);
  return {
    notation,
    instrument,
    notationOf: (source) =>
      source === instrument.sources[0] ? notation : (notationOfFile(source.path, source.text) ?? notation),
  };
}

/** How many notes of each kind the record of a build counts. */
async function countsIn(files: Files, path: string): Promise<NoteCounts | undefined> {
  const whole = await readWholeText(files, path);
  if (whole.kind !== 'text') return undefined;
  try {
    const { noteCounts } = JSON.parse(whole.text) as { noteCounts?: Partial<NoteCounts> };
    const { assumed = 0, approximated = 0, dropped = 0 } = noteCounts ?? {};
    return { assumed, approximated, dropped };
  } catch {
    return undefined;
  }
}
