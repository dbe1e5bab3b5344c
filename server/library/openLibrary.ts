import type { Files } from '../model/files';
import { folderOf, isWithin, joinPath, nameOf } from '../model/paths';
import { Source } from '../model/text/source';
import { readWholeText } from '../workspace/files/readWhole';
import { libraryFileName, parseLibraryFile } from './libraryFile';
import type { ResolvedLibrary } from './libraryInstrument';
import { resolveLibrary } from './resolveLibrary';

/** A library as it stands in its file; or why there is none, in one line. */
export type OpenedLibrary =
  | { kind: 'library'; path: string; library: ResolvedLibrary }
  | { kind: 'refused'; reason: string };

const outsideReason =
  '"output" leads out of the folder of the library file, where nothing is written. Name a folder in it; a link there may lead elsewhere.';

/**
 * Opens the library file at an absolute path, or that of a folder. What makes no sense in it stands in the problems of the
 * library, with its line; nothing else is lost by it.
 */
export async function openLibrary(files: Files, fileOrFolder: string): Promise<OpenedLibrary> {
  const isFolder = (await files.stat(fileOrFolder))?.kind === 'folder';
  const path = isFolder ? joinPath(fileOrFolder, libraryFileName) : fileOrFolder;
  const whole = await readWholeText(files, path);
  if (whole.kind === 'missing')
    return {
      kind: 'refused',
      reason: isFolder
        ? `there is no ${libraryFileName} in it; "zonewright library new" writes one`
        : 'there is no such file, or it cannot be read',
    };
  if (whole.kind !== 'text') return { kind: 'refused', reason: 'it is not a text file' };
  const { library, problems } = parseLibraryFile(whole.text);
  const text = new Source(path, whole.text);
  const told = problems.map(
    ({ message, start }) => `${nameOf(path)}, line ${text.positionAt(start).line}: ${message}`,
  );
  if (!library) return { kind: 'refused', reason: told[0] ?? 'it holds no library' };
  const resolved = await resolveLibrary(library, folderOf(path), files);
  const outside = [resolved.output, ...resolved.packs].find((one) => !isWithin(resolved.folder, one));
  if (outside !== undefined) return { kind: 'refused', reason: outsideReason };
  return { kind: 'library', path, library: { ...resolved, problems: [...told, ...resolved.problems] } };
}
