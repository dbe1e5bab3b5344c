import type { LineNote } from '../../model/writing/lineNotes';
import { foldNotes } from '../../model/writing/lineNotes';
import type { Terminal } from '../terminal';

/** Tells notes on standard error, a line for each; those that say the same of several values share one. */
export function tellNotes(terminal: Terminal, name: string, notes: readonly LineNote[]): void {
  for (const { note, count, lines } of foldNotes(notes)) {
    const { line, file, kind, message } = note;
    const place = file === undefined ? name : `${name}, ${file}`;
    const more = count === 1 ? '' : ` The same holds for ${count - 1} more, in all in lines ${lines}.`;
    terminal.error(`${place}:${line}: ${kind}: ${message}${more}\n`);
  }
}
