import { openZoneTable } from '../../table/readTable';
import type { AudioIndex } from './audioIndex';
import type { FolderMatches } from './sampleFolders';
import { sampleFolders } from './sampleFolders';

/** A zone table that is to be paired. */
export interface TableCandidate {
  path: string;
  text: string;
  /** Its sample names as they stand in it. */
  names: ReadonlySet<string>;
  matches: FolderMatches;
}

/** What a text is as a zone table: where its samples are; `undefined` for one that names none. */
export function tableCandidate(
  path: string,
  text: string,
  index: AudioIndex,
  within: string,
): TableCandidate | undefined {
  const names = openZoneTable(text, { path }).sampleNames();
  return names.size === 0 ? undefined : { path, text, names, matches: sampleFolders(index, names, within) };
}
