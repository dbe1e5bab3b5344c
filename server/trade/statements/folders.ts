import { isAudioFileName } from '../../model/fileNames';
import { languages } from '../languages/languages';
import { bareWord, wordsOf } from '../languages/spelling';

/** A folder that samples lie in, and the text that says so. */
export interface StatedFolder {
  /** With a slash behind it. */
  path: string;
  text: string;
}

const longest = 2000;
const longestPath = 120;
const folderWords = languages.flatMap(({ folders }) => folders);
/** Folders in names of places, which are other things as headings: where it was recorded, what lies lowest. */
const ofOtherThings: ReadonlySet<string> = new Set(
  'base basepath root home location samples sub map mapa mapp'.split(' '),
);
const folderWord = folderWords.join('|');
const statedFolder = new RegExp(
  String.raw`(?:^|[^\p{L}])(?:(?:samples|files|recordings|wavs?|they) (?:are|lie|live|stand|sit|come) (?:all )?(?:in|from|under)(?: the)?(?: (?:folder|directory))?|(?:dateien|samples) (?:liegen|sind|stehen) (?:alle )?in|(?:${folderWord})\s*(?:is|ist|est|es|:|=>?))\s*(?:["'\u201c\u00ab]([^"'\u201d\u00bb\n]{1,120}[/\\][^"'\u201d\u00bb\n]{0,120})|((?:[\p{L}]:)?[\p{L}\p{N}_.()~-]*(?:[/\\][\p{L}\p{N}_.()~-]*)+))`,
  'iu',
);

const fileWords = ['samples', 'recordings', 'wavs', ...languages.flatMap(({ files }) => files)].join('|');
/** A sentence that says in which folder the files are, in any language of headings: `Os arquivos estão na pasta "Sons"`. */
const folderOfFiles = new RegExp(
  String.raw`(?<!\p{L})(?:${fileWords})\s+((?:\p{L}+\s+){1,4})(?:${folderWord})\s+(?:["'\u201c\u201e\u00ab]\s?([^"'\u201c\u201d\u00bb\n]{1,120}?)\s?["'\u201c\u201d\u00bb]|((?:[\p{L}\p{N}_.()~-]+[/\\])+))`,
  'iu',
);
const denied =
  /(?<!\p{L})(?:not?|never|longer|nicht|kein\p{L}*|pas|plus|non|não|niet|nie|inte|ikke|ei)(?!\p{L})/iu;

/** A folder in an attribute of markup: `folder="strings"`. */
const attributeFolder = new RegExp(String.raw`(?:^|\s)(?:${folderWord})="([^"\n/\\.][^"\n]{0,120})"`, 'iu');

/** A line that is nothing but a word for a folder and its name, of three words at most. */
const folderAlone = new RegExp(
  String.raw`^[\s#;*]*(?:${folderWords.filter((word) => !ofOtherThings.has(bareWord(word))).join('|')})\s?[:=]\s*["']?([\p{L}\p{N}_.()-]{1,40}(?: [\p{L}\p{N}_.()-]{1,40}){0,2})["']?\s*$`,
  'iu',
);

/** The folder that the text says samples lie in: a path, to be told from other words by its slash, or on a line of its own. */
export function folderIn(texts: readonly string[]): StatedFolder | undefined {
  for (const text of texts) {
    const found = statedFolder.exec(text.slice(0, longest));
    const quoted = attributeFolder.exec(text.slice(0, longest))?.[1];
    const [, between = '', named, bare] = folderOfFiles.exec(text.slice(0, longest)) ?? [];
    const ofFiles = denied.test(between) ? undefined : (named ?? bare);
    const path = folderPath(
      found?.[1] ?? found?.[2] ?? quoted ?? ofFiles ?? folderAlone.exec(text.slice(0, longest))?.[1] ?? '',
    );
    if (path !== undefined) return { path, text: text.trim() };
  }
  return undefined;
}

const names: ReadonlySet<string> = new Set(folderWords.map(bareWord));
const beside: ReadonlySet<string> = new Set(
  languages.flatMap(({ files, parts, fillers }) =>
    [...files, ...(parts.file ?? []), ...fillers].map(bareWord),
  ),
);

/** Whether a heading is a word for a folder, as `Sample folder`; `isPath` tells whether what stands below it are paths that end with a slash. */
export function headsFolder(heading: string, isPath: boolean): boolean {
  const words = wordsOf(heading).filter((word) => !beside.has(word));
  const [word = ''] = words;
  return words.length === 1 && names.has(word) && (isPath || !ofOtherThings.has(word));
}

/** A path of a folder with slashes, one behind it; `undefined` for the name of a file and for no folder at all. */
export function folderPath(text: string): string | undefined {
  const path = text.trim().replaceAll('\\', '/').replace(/\/\.$/, '/');
  const isFolder = path.length > 1 && path.length <= longestPath && !/[*?"<>|\n]/.test(path);
  if (!isFolder || isAudioFileName(path) || /\.\w{2,5}$/.test(path) || /^[/.-]+$/.test(path))
    return undefined;
  return path.endsWith('/') ? path : `${path}/`;
}
