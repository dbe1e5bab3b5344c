import { joinPath } from '../model/paths';

/** A folder that an element names for the paths in it. */
export interface NamedFolder {
  element: string;
  folder: string;
}

/**
 * The folder of a path inside elements that name some, the outermost first: the nearest one and, before it, those of elements of the same
 * name around it, as folders stand in folders; unless the nearest one names these itself.
 */
export function nestedFolder(around: readonly NamedFolder[]): string | undefined {
  const nearest = around.at(-1);
  if (!nearest) return undefined;
  let path = nearest.folder.replaceAll('\\', '/');
  for (const { element, folder } of around.slice(0, -1).reverse()) {
    const outer = folder.replaceAll('\\', '/').replace(/\/+$/, '');
    if (element !== nearest.element || path === outer || path.startsWith(`${outer}/`)) break;
    path = joinPath(outer, path);
  }
  return path;
}
