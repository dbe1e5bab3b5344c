import { isAudioFileName, isSampleFileName } from '../../model/fileNames';
import type { Files } from '../../model/files';
import { decodeText } from '../../model/text/decodeText';
import { vocabularyEnding } from '../../vocabulary/vocabulary';
import { settingsEnding } from '../libraryFile';

/** What a folder holds that may belong to a library. Paths are absolute and sorted. */
export interface LibraryTree {
  folder: string;
  /** Audio files that instruments can use. */
  audio: string[];
  /** Texts of any kind. */
  texts: { path: string; text: string }[];
  fonts: string[];
  /** What could not be looked at, each with the reason as a clause. */
  unread: { path: string; because: string }[];
}

const mostDepth = 24;
/** Longer texts are no tables that anybody copied. */
const mostBytes = 16 * 1024 * 1024;
/** Names of files that are no text, so that they need not be opened. */
const noText =
  /\.(?:jpe?g|png|gif|bmp|tiff?|webp|svg|pdf|zip|rar|7z|gz|tar|mp4|mov|avi|docx?|xlsx?|odt|ods|psd|exe|dll|dmg|iso|mid|midi|mp3|m4a)$/i;
const settings = /(?:^|\/)zonewright(?:\.library)?\.json$/;

/** Looks through a folder and all below it; hidden folders and those in `passed` are passed over. */
export async function libraryTree(
  files: Files,
  folder: string,
  passed: ReadonlySet<string> = new Set(),
): Promise<LibraryTree> {
  const tree: LibraryTree = { folder, audio: [], texts: [], fonts: [], unread: [] };
  const open = [{ path: folder, depth: 0 }];
  const others: string[] = [];
  for (let next = open.pop(); next; next = open.pop()) {
    const entries = await files.list(next.path);
    if (!entries) tree.unread.push({ path: next.path, because: 'this folder cannot be read' });
    for (const { name, kind } of entries ?? []) {
      const path = `${next.path === '/' ? '' : next.path}/${name}`;
      if (name.startsWith('.') || name === 'node_modules' || passed.has(path)) continue;
      if (kind === 'folder' && next.depth < mostDepth) open.push({ path, depth: next.depth + 1 });
      else if (kind !== 'file') continue;
      else if (isSampleFileName(name)) tree.audio.push(path);
      else if (/\.sf2$/i.test(name)) tree.fonts.push(path);
      else if (mayBeText(path)) others.push(path);
    }
  }
  for (const path of others.sort()) {
    const text = await textOf(files, path);
    if (text !== undefined) tree.texts.push({ path, text });
  }
  tree.audio.sort();
  tree.fonts.sort();
  return tree;
}

function mayBeText(path: string): boolean {
  const isOurs = path.endsWith(vocabularyEnding) || path.endsWith(settingsEnding) || settings.test(path);
  return !isOurs && !noText.test(path) && !isAudioFileName(path);
}

async function textOf(files: Files, path: string): Promise<string | undefined> {
  const reader = await files.open(path);
  if (!reader) return undefined;
  try {
    if (reader.size > mostBytes) return undefined;
    const decoded = decodeText(await reader.read(0, reader.size));
    return decoded.kind === 'text' && decoded.text.trim() !== '' ? decoded.text : undefined;
  } catch {
    return undefined;
  } finally {
    await reader.close();
  }
}
