import { isAbsolute } from 'node:path';

/** What of the system the place of the cache depends on. */
export interface SystemPlaces {
  platform: string;
  home: string;
  environment: Readonly<Record<string, string | undefined>>;
}

/**
 * The folder in which the program may keep what it can find out again, with `/`: below `XDG_CACHE_HOME` where that is
 * set to an absolute path, else below `.cache` (XDG Base Directory Specification 0.8); on macOS `Library/Caches` (Apple,
 * File System Programming Guide), on Windows the local application data (Known Folders, FOLDERID_LocalAppData).
 * `undefined` where there is no home.
 */
export function userCacheFolder({ platform, home, environment }: SystemPlaces): string | undefined {
  const { XDG_CACHE_HOME: chosen, LOCALAPPDATA: local } = environment;
  const below = (folder: string) => `${folder.replaceAll('\\', '/').replace(/\/+$/, '')}/zonewright`;
  if (chosen && isAbsolute(chosen)) return below(chosen);
  if (platform === 'win32' && local) return below(local);
  if (home === '') return undefined;
  return below(platform === 'darwin' ? `${home}/Library/Caches` : `${home}/.cache`);
}
