/** The folder part of a path with `/`, without the slash at its end; empty for a bare name. */
export function folderOf(path: string): string {
  const slash = path.lastIndexOf('/');
  return slash < 0 ? '' : slash === 0 ? '/' : path.slice(0, slash);
}

/**
 * Whether a tidy path is a folder or lies somewhere below it; both absolute, or both relative to one place, which is the
 * folder of an empty name. On drives and shares of Windows letter case does not count.
 */
export function isWithin(folder: string, path: string): boolean {
  if (folder === '') return !isAbsolutePath(path) && path !== '..' && !path.startsWith('../');
  const [outer, inner] = isOnWindows(folder) ? [folder.toLowerCase(), path.toLowerCase()] : [folder, path];
  return inner === outer || inner.startsWith(outer.endsWith('/') ? outer : `${outer}/`);
}

/** Whether a path with `/` starts at a drive or a share, as on Windows alone. */
function isOnWindows(path: string): boolean {
  return /^(?:[a-z]:|\/\/)/i.test(path);
}

/** The last part of a path with `/`. */
export function nameOf(path: string): string {
  return path.slice(path.lastIndexOf('/') + 1);
}

/** What a file is called without its ending; `.instrument.xml` is one ending. */
export function titleOf(path: string): string {
  return nameOf(path).replace(/(?<=.)(\.instrument)?\.[^.]*$/, '');
}

/** The ending of a file's name, with the dot, as {@link titleOf} leaves it out. */
export function endingOf(path: string): string {
  return nameOf(path).slice(titleOf(path).length);
}

/** The last part of a path with `/` or `\\`, without the ending of its name. */
export function nameWithoutEnding(path: string): string {
  const name = path.slice(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
  const point = name.lastIndexOf('.');
  return point > 0 ? name.slice(0, point) : name;
}

/** Whether a path starts at a root or a drive instead of the folder that it is read from. */
export function isAbsolutePath(path: string): boolean {
  return /^([a-z]:)?[\\/]/i.test(path);
}

/** Paths without anything to be taken out: no part starts with a point, none is empty. */
const plainPath = /^(?![a-z]:)[^\\/.:][^\\/]*(?:\/[^\\/.][^\\/]*)*$/i;
const plainFolder = /^(?:\/[^\\/.][^\\/]*)+$/;

/**
 * Joins a relative path to a folder and takes `.` and `..` out of the result. `\` counts as `/`.
 * An absolute path is answered as it is, tidied in the same way.
 */
export function joinPath(folder: string, path: string): string {
  // A tidy path below a tidy folder, as most are; thousands are joined for each instrument.
  if (plainPath.test(path) && plainFolder.test(folder)) return `${folder}/${path}`;
  const whole = (isAbsolutePath(path) || folder === '' ? path : `${folder}/${path}`).replaceAll('\\', '/');
  const parts: string[] = [];
  for (const part of whole.split('/')) {
    if (part === '' || part === '.') continue;
    const last = parts.at(-1);
    if (part === '..' && last !== undefined && last !== '..') parts.pop();
    else if (part !== '..' || !whole.startsWith('/')) parts.push(part);
  }
  return (whole.startsWith('/') ? '/' : '') + parts.join('/');
}

/**
 * The way from a folder to a path, with `..` where needed; both with `/` and both absolute or both relative to one
 * place. From one drive to another there is none, so the answer is the path itself.
 */
export function relativePath(folder: string, path: string): string {
  const from = joinPath('', folder).split('/').filter(Boolean);
  const to = joinPath('', path).split('/').filter(Boolean);
  if (from[0] !== to[0] && /^[a-z]:$/i.test(to[0] ?? '')) return to.join('/');
  let same = 0;
  while (same < from.length && same < to.length - 1 && from[same] === to[same]) same++;
  return [...from.slice(same).map(() => '..'), ...to.slice(same)].join('/');
}
