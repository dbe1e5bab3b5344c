import { isAudioFileName } from '../../../model/fileNames';
import type { ColumnMeaning } from '../../../trade/meaning';
import { folderPath, headsFolder } from '../../../trade/statements/folders';

/** A value of a block: what it is called, what that means as a heading, and what it is. */
export interface BlockValue {
  heading: string;
  meaning: ColumnMeaning | undefined;
  text: string;
}

/** What a value of a block without files says: the folder of samples, the name of the whole, or something of zones. */
export type BlockRole = 'folder' | 'name' | 'value';

/**
 * What the values of a block with a title say where it names no file and other blocks do, as `[instrument]` with `name=` and `path=` above
 * the zones; `undefined` for a block that names one.
 */
export function rolesInBlock(values: readonly BlockValue[]): BlockRole[] | undefined {
  if (values.some(({ text }) => isAudioFileName(unquoted(text)))) return undefined;
  return values.map(({ heading, meaning, text }) => {
    const written = unquoted(text);
    if (headsFolder(heading, /[/\\]$/.test(written)) && folderPath(written) !== undefined) return 'folder';
    return meaning === 'sample' ? 'name' : 'value';
  });
}

function unquoted(text: string): string {
  return text.replace(/^["']|["']$/g, '').trim();
}
