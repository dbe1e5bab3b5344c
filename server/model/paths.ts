/**
 * Where absolute paths with `/` start: at a root, at a drive, or at a share of a host (Microsoft, File path formats on Windows
 * systems: DOS and UNC paths). Nothing lies above it.
 */
const root = /^(?:\/\/[^/]+\/+[^/]+(?:\/|$)|[a-z]:\/|\/)/i;

/** The folder part of a path with `/`, without the slash at its end; empty for a bare name, and the root itself for a root. */
export function folderOf(path: string): string {
  const slash = path.lastIndexOf('/');
  if (slash < 0) return '';
  // A share of a host has nothing around it, and a drive without its slash would be the folder that was last open on it.
  if (slash <= 2 || path.startsWith('//')) {
    const start = root.exec(path)?.[0] ?? '';
    if (slash < start.length) return withoutSlash(start);
  }
  return path.slice(0, slash);
}

/** A root as it stands for a folder: that of a share ends without a slash. */
function withoutSlash(start: string): string {
  return start.length > 3 && start.endsWith('/') ? start.slice(0, -1) : start;
}

/** The host of a path on a share of Windows, in lower case; `undefined` for all others. */
function hostOf(path: string): string | undefined {
  return /^[\\/]{2}([^\\/]+)/.exec(path)?.[1]?.toLowerCase();
}

/**
 * Whether a path leads to another machine than its folder is on. Windows introduces its user to whatever machine it asks for a
 * file, so a text is not let choose one.
 */
export function leadsToOtherHost(folder: string, path: string): boolean {
  const host = hostOf(path);
  return host !== undefined && host !== hostOf(folder);
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
const plainFolder = /^(?:[a-z]:)?(?:\/[^\\/.][^\\/]*)+$/i;

/**
 * Joins a relative path to a folder and takes `.` and `..` out of the result. `\` counts as `/`.
 * An absolute path is answered as it is, tidied in the same way. No `..` leads out of a root, a drive or a share. A share is one
 * only from a folder of the same host, or from none; else its slashes count as one, see {@link leadsToOtherHost}.
 */
export function joinPath(folder: string, path: string): string {
  // A tidy path below a tidy folder, as most are; thousands are joined for each instrument.
  if (plainPath.test(path) && plainFolder.test(folder)) return `${folder}/${path}`;
  const between = folder === '' || /[\\/]$/.test(folder) ? '' : '/';
  const isElsewhere = folder !== '' && leadsToOtherHost(folder, path);
  const own = isElsewhere ? path.replace(/^[\\/]+/, '/') : path;
  const whole = (isAbsolutePath(own) ? own : folder + between + own).replaceAll('\\', '/');
  const start = root.exec(whole)?.[0] ?? '';
  const parts: string[] = [];
  for (const part of whole.slice(start.length).split('/')) {
    if (part === '' || part === '.') continue;
    const last = parts.at(-1);
    if (part === '..' && last !== undefined && last !== '..') parts.pop();
    else if (part !== '..' || start === '') parts.push(part);
  }
  if (parts.length === 0) return withoutSlash(start);
  return (start === '' || start.endsWith('/') ? start : `${start}/`) + parts.join('/');
}

/**
 * The way from a folder to a path, with `..` where needed; both with `/` and both absolute or both relative to one
 * place. From one drive or share to another there is none, so the answer is the path itself. On Windows letter case does not count.
 */
export function relativePath(folder: string, path: string): string {
  const [outer, whole] = [joinPath('', folder), joinPath('', path)];
  const spelt = isOnWindows(whole) ? (part: string) => part.toLowerCase() : (part: string) => part;
  const [start, otherStart] = [outer, whole].map((one) => withoutSlash(root.exec(one)?.[0] ?? ''));
  if (spelt(start) !== spelt(otherStart) && isOnWindows(whole)) return whole;
  const from = outer.slice(start.length).split('/').filter(Boolean);
  const to = whole.slice(otherStart.length).split('/').filter(Boolean);
  let same = 0;
  while (same < from.length && same < to.length - 1 && spelt(from[same]) === spelt(to[same])) same++;
  return [...from.slice(same).map(() => '..'), ...to.slice(same)].join('/');
}

/** The innermost folder that all paths lie in, with `/`; empty where nothing is around them all. */
export function commonFolder(paths: readonly string[]): string {
  let common = folderOf(paths[0] ?? '');
  for (const path of paths) while (common !== '' && !isWithin(common, path)) common = outside(common);
  return common;
}

function outside(folder: string): string {
  const around = folderOf(folder);
  return around === folder ? '' : around;
}
