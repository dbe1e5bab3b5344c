import { keyOfNoteName } from '../../model/keys';
import { folderOf, isWithin, nameOf, relativePath } from '../../model/paths';
import { counted } from '../../model/wording/counted';
import { wordsOfName } from '../../trade/names/nameWords';
import type { InstrumentEntry, LeftOut } from '../libraryFile';
import { instrumentName, isPartFolder, nameLikeness } from './instrumentNames';
import { folderName, titleOfTable } from './namesOfTables';

/** The share of the files whose names have to tell a key. */
const leastKeys = 0.5;

/**
 * Folders of recordings that no table or text uses: instruments where the names of the files tell keys. One that is named like
 * a table without samples is left to a person. `folder` is that of the library; `unpaired` are paths of tables from it.
 */
export function recordingFolders(
  folder: string,
  audio: readonly string[],
  isUsed: (path: string) => boolean,
  unpaired: readonly string[],
): { entries: InstrumentEntry[]; leftOut: LeftOut[] } {
  const byFolder = new Map<string, string[]>();
  for (const path of audio) {
    if (isUsed(path)) continue;
    const whole = wholeFolder(folder, path);
    const list = byFolder.get(whole);
    if (list) list.push(path);
    else byFolder.set(whole, [path]);
  }
  const entries: InstrumentEntry[] = [];
  const leftOut: LeftOut[] = [];
  for (const [whole, paths] of byFolder) {
    const shown = relativePath(folder, whole) || '.';
    const table = unpaired.find((path) => nameLikeness(titleOfTable(path), folderName(whole)) >= 0.6);
    if (table !== undefined) {
      const because = `${table} is named like it, but names other files. If they belong together, correct the names in one of them.`;
      leftOut.push({ path: shown, because });
      continue;
    }
    const keys = paths.map(keyInName).filter((key) => key !== undefined);
    if (keys.length >= paths.length * leastKeys && new Set(keys).size > 1) {
      const name = instrumentName(nameOf(whole), false) || nameOf(whole);
      const because = [
        `The names of ${keys.length} of ${counted(paths.length, 'recording')} tell keys, and no table or text uses them.`,
      ];
      const pairing = { confidence: 0.8, because, doubts: [] };
      entries.push({ name, source: shown, pairing });
    } else
      leftOut.push({
        path: shown,
        because: `No table or text uses its ${counted(paths.length, 'recording')}, and their names tell no keys.`,
      });
  }
  return { entries, leftOut };
}

/** The folder of an instrument around a file: beyond those named after layers, microphones and kinds of files. */
function wholeFolder(library: string, path: string): string {
  let at = folderOf(path);
  while (at !== library && isWithin(library, at) && isPartFolder(nameOf(at))) at = folderOf(at);
  return at;
}

function keyInName(path: string): number | undefined {
  for (const word of wordsOfName(nameOf(path).replace(/\.[^.]*$/, ''))) {
    if (/^[a-h](?:#|b|s|♯|♭)?-?\d$/i.test(word)) return keyOfNoteName(word.replace(/s(?=-?\d)/i, '#'));
    const number = /^\d{2,3}$/.test(word) ? Number(word) : Number.NaN;
    if (number >= 12 && number <= 127) return number;
  }
  return undefined;
}
