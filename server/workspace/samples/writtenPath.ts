import { joinPath, relativePath } from '../../model/paths';

/** The path of a file, absolute, as it is to be written in a text of a folder, so that `defaultPath` before it leads to the file. */
export function writtenPath(
  file: string,
  { outputFolder, defaultPath = '' }: { outputFolder: string; defaultPath?: string | undefined },
): string {
  const path = relativePath(outputFolder, file);
  const prefix = defaultPath.replaceAll('\\', '/');
  if (path.startsWith(prefix)) return path.slice(prefix.length);
  return prefix.endsWith('/') ? relativePath(joinPath(outputFolder, prefix), file) : path;
}
