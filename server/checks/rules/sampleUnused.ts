import { folderOf } from '../../model/paths';

/** What a folder holds, for {@link findUnusedSamples}; all paths with `/` and in one form. */
export interface FolderContents {
  /** Paths of the audio files that were found. */
  audioFiles: Iterable<string>;
  /** Paths of the samples that instruments refer to, in the letter case of the files. */
  used: Iterable<string>;
  /** Paths of the instrument files. */
  instruments: Iterable<string>;
}

/**
 * The audio files in sample folders that no instrument refers to (finding `sample-unused`), in the order given. A
 * sample folder is one that holds a file that an instrument refers to, with the folders below it. One that also holds
 * an instrument file counts without the folders below it, and so does one inside another's reach that holds an
 * instrument file: what lies there belongs to that instrument.
 */
export function findUnusedSamples({ audioFiles, used, instruments }: FolderContents): string[] {
  const usedPaths = new Set(used);
  const sampleFolders = new Set([...usedPaths].map(folderOf));
  const instrumentFolders = new Set([...instruments].map(folderOf));
  const answers = new Map<string, boolean>();
  const isInSampleFolder = (folder: string): boolean => {
    const known = answers.get(folder);
    if (known !== undefined) return known;
    const above = folderOf(folder);
    const answer =
      sampleFolders.has(folder) ||
      (folder !== '' &&
        above !== folder &&
        !instrumentFolders.has(folder) &&
        !instrumentFolders.has(above) &&
        isInSampleFolder(above));
    answers.set(folder, answer);
    return answer;
  };
  return [...audioFiles].filter((path) => !usedPaths.has(path) && isInSampleFolder(folderOf(path)));
}
