/**
 * Of files that bear a name, those that agree with most of the folders which are written before it, from the name outwards:
 * the outer ones may be another machine's. All of them where none agrees.
 */
export function agreeingMost(paths: readonly string[], written: string): readonly string[] {
  const wanted = written.replaceAll('\\', '/').split('/');
  if (wanted.length < 2 || paths.length < 2) return paths;
  const agreeing = paths.map((path) => sharedFolders(path.split('/'), wanted));
  const most = Math.max(...agreeing);
  return paths.filter((_, at) => agreeing[at] === most);
}

/** How many folders before the name are the same in two paths, letter case aside. */
function sharedFolders(one: readonly string[], other: readonly string[]): number {
  let shared = 0;
  while (shared < Math.min(one.length, other.length) - 1) {
    const at = -2 - shared;
    if (one.at(at)?.toLowerCase() !== other.at(at)?.toLowerCase()) break;
    shared++;
  }
  return shared;
}
