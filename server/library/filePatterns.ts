/**
 * Whether a path with `/` fits a pattern: `*` stands for any part of a name, `?` for one character, `**` for any folders,
 * none included. Letter case counts.
 */
export function fitsPattern(path: string, pattern: string): boolean {
  return patternOf(pattern).test(path);
}

/** The folder that all paths of a pattern lie in; empty for the one that the pattern starts from. */
export function fixedFolder(pattern: string): string {
  const parts = pattern.replaceAll('\\', '/').replace(/^\.\//, '').split('/');
  const first = parts.findIndex((part) => /[*?]/.test(part));
  return parts.slice(0, first < 0 ? -1 : first).join('/');
}

function patternOf(pattern: string): RegExp {
  const tidy = pattern.replaceAll('\\', '/').replace(/^\.\//, '');
  const source = tidy.replace(/\*\*\/|\*\*|[*?]|[^*?]+/g, (part) => {
    if (part === '**/') return '(?:[^/]+/)*';
    if (part === '**') return '.*';
    if (part === '*') return '[^/]*';
    if (part === '?') return '[^/]';
    return part.replace(/[\\^$.|+()[\]{}]/g, '\\$&');
  });
  return new RegExp(`^${source}$`, 'u');
}
