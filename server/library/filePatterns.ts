/**
 * Whether a path with `/` fits a pattern: `*` stands for any part of a name, `?` for one character, `**` for any folders,
 * none included. Letter case counts. Takes no longer for a pattern that is made to take long.
 */
export function fitsPattern(path: string, pattern: string): boolean {
  const parts = pattern.replaceAll('\\', '/').replace(/^\.\//, '').split('/');
  // What stands behind the last slash is a file, which folders alone do not make.
  if (parts.at(-1) === anyFolders) parts.push('*');
  return fitNames(path.split('/'), parts);
}

/** The folder that all paths of a pattern lie in; empty for the one that the pattern starts from. */
export function fixedFolder(pattern: string): string {
  const parts = pattern.replaceAll('\\', '/').replace(/^\.\//, '').split('/');
  const first = parts.findIndex((part) => /[*?]/.test(part));
  return parts.slice(0, first < 0 ? -1 : first).join('/');
}

/** Whether the names of a path, one after the other, fit the parts of a pattern. */
function fitNames(names: readonly string[], parts: readonly string[]): boolean {
  return fits(names, parts, isFolders, fitsName);
}

const isFolders = (part: string) => part === anyFolders;
const anyFolders = '**';

/** Whether a name fits a part of a pattern. */
function fitsName(name: string, part: string): boolean {
  if (!/[*?]/.test(part)) return name === part;
  // By characters, not by halves of them.
  return fits([...name], [...part], isMany, fitsCharacter);
}

const isMany = (sign: string) => sign === '*';
const fitsCharacter = (character: string, sign: string) => sign === '?' || sign === character;

/**
 * Whether a list fits a pattern of which some parts stand for any number of items. Only the last of these before a place that does
 * not fit has to take more, so that the work grows with the product of the lengths, whatever the pattern.
 */
function fits<Item, Part>(
  items: readonly Item[],
  pattern: readonly Part[],
  standsForAny: (part: Part) => boolean,
  fitsOne: (item: Item, part: Part) => boolean,
): boolean {
  let [at, part] = [0, 0];
  let [lastAny, taken] = [-1, 0];
  while (at < items.length) {
    if (part < pattern.length && standsForAny(pattern[part])) {
      lastAny = part++;
      taken = at;
    } else if (part < pattern.length && fitsOne(items[at], pattern[part])) {
      at++;
      part++;
    } else if (lastAny >= 0) {
      part = lastAny + 1;
      at = ++taken;
    } else return false;
  }
  while (part < pattern.length && standsForAny(pattern[part])) part++;
  return part === pattern.length;
}
