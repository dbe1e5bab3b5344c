import type { Files } from '../../model/files';
import { isWithin, joinPath, nameOf, relativePath } from '../../model/paths';
import { lackOfZoneTable } from '../../table/looksLikeZoneTable';
import type { InstrumentEntry, LibraryFile } from '../libraryFile';
import { defaultOutput } from '../libraryFile';
import { AudioIndex } from './audioIndex';
import { fontPresets } from './fontPresets';
import { instrumentTexts } from './instrumentTexts';
import { libraryTree } from './libraryTree';
import { pairTables } from './pairTables';
import { recordingFolders } from './recordingFolders';
import type { TableCandidate } from './tableCandidates';
import { tableCandidate } from './tableCandidates';

const tableName = /\.(?:tsv|csv)$/i;

/**
 * The library file for what a folder holds: texts of instruments, presets of SoundFonts, zone tables with the folders of
 * their samples, and folders of recordings, each with what speaks for it and against it. Nothing is written. What is not
 * known to be an instrument stands in `leftOut`.
 */
export async function newLibrary(files: Files, folder: string): Promise<LibraryFile> {
  const tree = await libraryTree(files, folder, new Set([joinPath(folder, defaultOutput)]));
  const texts = await instrumentTexts(files, tree);
  const fonts = await fontPresets(files, folder, tree.fonts);
  const tables = tablesIn(tree.texts, texts.read, new AudioIndex(tree.audio), folder);
  const paired = pairTables(folder, tables.found);
  const used = [...paired.folders];
  const isUsed = (path: string) => texts.samples.has(path) || used.some((one) => isWithin(one, path));
  const recordings = recordingFolders(
    folder,
    tree.audio,
    isUsed,
    paired.leftOut.map(({ path }) => path),
  );
  const all = [texts, fonts, paired, recordings];
  const unread = tree.unread.map(({ path, because }) => ({
    path: relativePath(folder, path) || '.',
    because,
  }));
  const instruments = all.flatMap(({ entries }) => entries);
  doubtSameNames(instruments);
  return {
    title: nameOf(folder),
    targets: ['sfz'],
    instruments: instruments.sort(
      (a, b) => compared(a.name.toLowerCase(), b.name.toLowerCase()) || compared(a.source, b.source),
    ),
    leftOut: [...all.flatMap(({ leftOut }) => leftOut), ...tables.leftOut, ...unread].sort((a, b) =>
      compared(a.path, b.path),
    ),
  };
}

/** Instruments of one name may be the same in several forms. */
function doubtSameNames(instruments: readonly InstrumentEntry[]): void {
  const byName = new Map<string, InstrumentEntry[]>();
  for (const one of instruments) {
    const name = one.name.toLowerCase();
    byName.set(name, [...(byName.get(name) ?? []), one]);
  }
  for (const same of byName.values())
    for (const one of same) {
      const [other] = same.filter((each) => each !== one);
      if (!other || !one.pairing) continue;
      one.pairing.doubts.push(`${other.source} has the same name: they may be one instrument in two forms.`);
      one.pairing.confidence = Math.min(one.pairing.confidence, 0.5);
    }
}

function tablesIn(
  texts: readonly { path: string; text: string }[],
  read: ReadonlySet<string>,
  index: AudioIndex,
  folder: string,
): { found: TableCandidate[]; leftOut: { path: string; because: string }[] } {
  const found: TableCandidate[] = [];
  const leftOut: { path: string; because: string }[] = [];
  for (const { path, text } of texts) {
    if (read.has(path)) continue;
    const lack = lackOfZoneTable(text);
    const candidate = lack === undefined ? tableCandidate(path, text, index, folder) : undefined;
    if (candidate) found.push(candidate);
    else if (tableName.test(path))
      leftOut.push({
        path: relativePath(folder, path),
        because: `It is no zone table: ${lack ?? 'it names no samples'}.`,
      });
  }
  return { found, leftOut };
}

/** The order of the characters, which is the same on every machine. */
function compared(one: string, other: string): number {
  return one < other ? -1 : one > other ? 1 : 0;
}
