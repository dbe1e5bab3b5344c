import type { LibraryInstrument, ResolvedLibrary } from '../../library/libraryInstrument';
import type { PackSource, PackText } from '../../library/pack/packSource';
import { OutputError } from '../../model/output';
import { joinPath, titleOf } from '../../model/paths';
import { readWholeText } from '../../workspace/files/readWhole';
import { notationOfFile } from '../../workspace/notations/notationOf';
import type { Terminal } from '../terminal';
import { loadInstrument, readInput } from './input';

/** Notes of a conversion by what they tell. */
export interface NoteCounts {
  assumed: number;
  approximated: number;
  dropped: number;
}

/** An instrument's text to be packed, with the vocabulary file that it is read by, where there is one. */
export async function packTextOf(
  terminal: Terminal,
  name: string,
): Promise<{ text: PackText; files: string[] }> {
  const input = await readInput(terminal, name);
  const loaded = await loadInstrument(terminal, input);
  if (!loaded)
    throw new OutputError(
      `${name}: a zone table is no instrument yet; convert it first and pack what comes of it`,
    );
  const { notation, instrument, vocabulary } = loaded;
  const savedIn = vocabulary?.savedIn;
  return {
    text: {
      notation,
      instrument,
      notationOf: (source) =>
        source === instrument.sources[0] ? notation : (notationOfFile(source.path, source.text) ?? notation),
    },
    files: savedIn === undefined ? [] : [savedIn],
  };
}

/** What a build has written of an instrument: its texts and fonts in the folders of their targets, and its notes. */
export async function builtTexts(
  terminal: Terminal,
  library: ResolvedLibrary,
  { fileName, name, targets }: LibraryInstrument,
): Promise<Pick<PackSource, 'texts' | 'files' | 'notes'> & { noteCounts?: NoteCounts }> {
  const texts: PackText[] = [];
  const files: string[] = [];
  for (const target of targets) {
    const folder = joinPath(library.output, target.folder);
    const found = (await terminal.files.list(folder))?.find(
      (entry) => entry.kind === 'file' && titleOf(entry.name) === fileName && isInstrument(entry.name),
    );
    if (!found) throw new OutputError(`${name}: it is not built yet; run "zonewright library build" first`);
    const path = joinPath(folder, found.name);
    if (target.notation === 'sf2') {
      files.push(path);
      continue;
    }
    const one = await packTextOf(terminal, path);
    texts.push(one.text);
    for (const file of one.files) if (!files.includes(file)) files.push(file);
  }
  const map = joinPath(library.output, `maps/${fileName}.svg`);
  if ((await terminal.files.stat(map))?.kind === 'file') files.push(map);
  const notes = await readWholeText(terminal.files, joinPath(library.output, `notes/${fileName}.md`));
  const noteCounts = await countsIn(terminal, joinPath(library.output, `records/${fileName}.json`));
  return {
    ...{ texts, files },
    ...(notes.kind === 'text' && { notes: notes.text }),
    ...(noteCounts && { noteCounts }),
  };
}

/** How many notes of each kind the record of a build counts. */
async function countsIn(terminal: Terminal, path: string): Promise<NoteCounts | undefined> {
  const whole = await readWholeText(terminal.files, path);
  if (whole.kind !== 'text') return undefined;
  try {
    const { noteCounts } = JSON.parse(whole.text) as { noteCounts?: Partial<NoteCounts> };
    const { assumed = 0, approximated = 0, dropped = 0 } = noteCounts ?? {};
    return { assumed, approximated, dropped };
  } catch {
    return undefined;
  }
}

function isInstrument(name: string): boolean {
  return /\.(?:sfz|xml|sf2)$/i.test(name);
}
