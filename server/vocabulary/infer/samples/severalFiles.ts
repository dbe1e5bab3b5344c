import { isAudioFileName } from '../../../model/fileNames';
import type { Assigned } from '../assign';

/** Names end before one of these, or before blanks where each word is a file by itself. */
const separators: readonly RegExp[] = [/[,;|\n]/, /\s+/];

/** Why places that give several files for one region cannot be read, as a clause; `undefined` where each gives one file. */
export function severalFilesIn(assigned: readonly Assigned[]): string | undefined {
  for (const { texts } of assigned.filter(({ target }) => target === 'sample'))
    for (const text of texts)
      if (text !== undefined && namesSeveral(text))
        return `"${shown(text)}" names several files in one place, and a region has one: write an element for each file`;
  return undefined;
}

/** Whether a text is a list of audio files. */
function namesSeveral(text: string): boolean {
  return separators.some((separator) => {
    const names = text
      .split(separator)
      .map((name) => name.trim())
      .filter((name) => name !== '');
    return names.length > 1 && names.every(isAudioFileName);
  });
}

function shown(text: string): string {
  const line = text.replace(/\s+/g, ' ').trim();
  return line.length > 60 ? `${line.slice(0, 60)}…` : line;
}
