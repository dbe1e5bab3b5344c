import { isXmlFileName } from '../model/fileNames';
import type { Files } from '../model/files';
import type { Instrument } from '../model/instrument';
import type { Notation } from '../model/notation';
import type { Source } from '../model/text/source';
import { isInstrumentXml } from '../xml/isInstrumentXml';
import { readInstrument } from './analyse';
import { IncludeStore } from './files/includeStore';
import { instrumentFilesBelow } from './files/instrumentFiles';
import { Reach } from './files/reach';
import { readWholeText } from './files/readWhole';
import { looked } from './notations/certainNotation';
import type { NotationFinder } from './notations/notationFinder';
import { notations } from './notations/notationOf';
import type { OpenDocument } from './openDocument';

/** Longer texts are written by a program and left out, unless they are open. */
const mostBytes = 16 * 1024 * 1024;

/** An instrument as it is now. */
export interface CurrentInstrument {
  path: string;
  notation: Notation;
  instrument: Instrument;
}

/**
 * Reads the instruments of folders, and those open in the editor, one after the other: open ones as they stand there,
 * others from the disk. Nothing is remembered, so that edits made from what was read fit the files.
 */
export async function* instrumentsAround(
  files: Files,
  finder: NotationFinder,
  folders: readonly string[],
  open: readonly OpenDocument[],
  reach = new Reach(files, folders),
): AsyncGenerator<CurrentInstrument> {
  const openByPath = new Map(open.flatMap((document) => (document.path ? [[document.path, document]] : [])));
  const includes = new IncludeStore(files, (path) => openByPath.get(path)?.getText(), reach);
  const paths = new Set([...(await instrumentFilesBelow(files, folders)), ...openByPath.keys()]);
  for (const path of [...paths].sort()) {
    const document = openByPath.get(path);
    const text = document ? document.getText() : await textOf(files, path);
    if (text === undefined) continue;
    const found = await finder.find({ path, text, ...(document && { languageId: document.languageId }) });
    if (!found) continue;
    const { notation } = found;
    const instrument = await readInstrument({ path, text, notation, ...finder.readingOf(found) }, includes);
    yield { path, notation, instrument };
  }
}

async function textOf(files: Files, path: string): Promise<string | undefined> {
  const stat = await files.stat(path);
  if (stat?.kind !== 'file' || stat.size > mostBytes) return undefined;
  const whole = await readWholeText(files, path);
  return whole.kind === 'text' ? whole.text : undefined;
}

/** Which notation each file of an instrument is read in: an included one may have another than the main file. */
export function notationOfParts({ notation, instrument }: CurrentInstrument): (source: Source) => Notation {
  return (source) => {
    if (notation.format === 'sfz' || source === instrument.sources[0]) return notation;
    const isXml = isXmlFileName(source.path) || isInstrumentXml(source.text.slice(0, looked), source.path);
    return notations[isXml ? 'xml' : 'sfz'];
  };
}

/** Takes out those that are part of another one; of files that include each other, all stay. */
export function mainsOf<Item extends { path: string; included: ReadonlySet<string> }>(
  all: readonly Item[],
): Item[] {
  const including = new Map<string, Item[]>();
  for (const one of all) {
    for (const path of one.included) {
      const list = including.get(path);
      if (list) list.push(one);
      else including.set(path, [one]);
    }
  }
  return all.filter(
    ({ path, included }) =>
      !(including.get(path) ?? []).some((other) => other.path !== path && !included.has(other.path)),
  );
}
