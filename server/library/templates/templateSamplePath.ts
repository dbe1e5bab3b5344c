import { isAbsolutePath, joinPath, relativePath } from '../../model/paths';

/**
 * How the samples of a source are named in a text in the target's folder whose `default_path` stands before them. Folders are
 * absolute with `/`; where one is missing, paths stay as they are.
 */
export function templateSamplePath(
  { folder, targetFolder }: { folder: string | undefined; targetFolder: string | undefined },
  defaultPath: string,
): (path: string) => string {
  const prefix = defaultPath.replaceAll('\\', '/');
  return (path) => {
    if (path.startsWith('*') || isAbsolutePath(path) || path === '') return path;
    const moved =
      folder === undefined || targetFolder === undefined
        ? path
        : relativePath(targetFolder, joinPath(folder, path));
    if (moved.startsWith(prefix)) return moved.slice(prefix.length);
    return prefix.endsWith('/') ? relativePath(prefix, moved) : moved;
  };
}
