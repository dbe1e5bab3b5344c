import type { Files } from '../model/files';
import { isWithin, joinPath, nameOf, relativePath } from '../model/paths';
import { filesBelow } from '../workspace/files/instrumentFiles';
import { fitsPattern, fixedFolder } from './filePatterns';
import type { SourceSettings } from './libraryFile';
import { settingsEnding } from './libraryFile';

/**
 * The absolute paths of the files of a source, sorted, without those that the library writes. A pattern that no file fits
 * is told in `problems`.
 */
export async function filesOfSource(
  files: Files,
  { folder, written }: { folder: string; written: string },
  { files: patterns, except = [] }: SourceSettings,
  problems: string[],
): Promise<string[]> {
  const found = new Set<string>();
  for (const pattern of patterns) {
    const start = joinPath(folder, fixedFolder(pattern));
    const isWanted = (path: string) => {
      const shown = relativePath(folder, path);
      return (
        fitsPattern(shown, pattern) &&
        !path.endsWith(settingsEnding) &&
        !isWithin(written, path) &&
        !except.some((one) => fitsPattern(shown, one))
      );
    };
    const byName = (name: string) => fitsPattern(name, nameOf(pattern));
    const paths = (await filesBelow(files, [start], byName)).filter(isWanted);
    if (paths.length === 0) problems.push(`No file fits "${pattern}".`);
    for (const path of paths) found.add(path);
  }
  return [...found].sort();
}
