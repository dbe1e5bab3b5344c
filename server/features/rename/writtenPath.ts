import { folderOf, joinPath, relativePath } from '../../model/paths';

/** A path in text: as it is written, and what it reads as with variables and references put in. */
export interface WrittenPath {
  raw: string;
  value: string;
}

/**
 * The text to write for a path that changes, with as much kept as it is written as can be: variables in the folders or
 * in the name stay where their part of the path stays.
 */
export function rewrittenPath(
  { raw, value }: WrittenPath,
  newValue: string,
  spell: (text: string) => string,
): string {
  if (raw === value || !raw.includes('$')) return spell(newValue);
  const kept = commonFolders(value, newValue);
  const tail = value.slice(kept);
  if (kept > 0 && raw.endsWith(tail) && !tail.includes('$'))
    return raw.slice(0, raw.length - tail.length) + spell(newValue.slice(kept));
  const shared = commonEnd(value, newValue);
  const head = value.slice(0, value.length - shared);
  if (shared > 0 && raw.startsWith(head) && !head.includes('$'))
    return spell(newValue.slice(0, newValue.length - shared)) + raw.slice(head.length);
  return spell(newValue);
}

/** How much of two paths is the same from the start, up to the last slash in it. */
function commonFolders(a: string, b: string): number {
  let at = 0;
  while (at < a.length && a[at] === b[at]) at++;
  return Math.max(a.lastIndexOf('/', at - 1), a.lastIndexOf('\\', at - 1)) + 1;
}

/** How much of two paths is the same at the end, from the first slash in it. */
function commonEnd(a: string, b: string): number {
  let length = 0;
  while (length < a.length && length < b.length && a.at(-1 - length) === b.at(-1 - length)) length++;
  const slash = a.slice(a.length - length).search(/[\\/]/);
  return slash < 0 ? 0 : length - slash;
}

/** A path with the separators that another one is written with. */
export function withSeparatorsOf(path: string, other: string): string {
  return other.includes('\\') && !other.includes('/') ? path.replaceAll('/', '\\') : path;
}

/** The way from a folder to another as a prefix of paths: empty, or with a slash at its end. */
export function prefixTo(folder: string, other: string): string {
  const way = folderOf(relativePath(folder, joinPath(other, 'file')));
  return way === '' ? '' : `${way}/`;
}
