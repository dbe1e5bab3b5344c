import { notesPage } from '../../features/notesPage';
import type { Instrument } from '../../model/instrument';
import type { OutputAccount } from '../../model/output';
import { counted } from '../../model/wording/counted';
import type { LineNote } from '../../model/writing/lineNotes';
import { importantFirst, lineNotes } from '../../model/writing/lineNotes';
import type { Terminal } from '../terminal';
import { tellNotes } from './notes';
import type { OutputFile } from './overwriting';
import { write } from './writeOutput';

/** An instrument that was converted, with what is said of it. */
export interface Converted {
  /** What it is called in notes. */
  name: string;
  instrument: Instrument;
  account: OutputAccount;
}

/**
 * Tells the notes of a conversion on standard error, or writes them to the file that `--notes` names: a page, or JSON. Notes of
 * several instruments say which one they are about.
 */
export async function giveNotes(
  terminal: Terminal,
  title: string,
  converted: readonly Converted[],
  notesFile: OutputFile | undefined,
): Promise<void> {
  const isOne = converted.length === 1;
  const all = converted.flatMap(({ name, instrument, account }) =>
    lineNotes(instrument, account.notes).map((note): LineNote => (isOne ? note : { ...note, file: name })),
  );
  if (notesFile === undefined) {
    tellNotes(terminal, title, importantFirst(isOne ? all : oneOfEach(all)));
    return;
  }
  const kept = converted.reduce((sum, { account }) => sum + account.kept, 0);
  const page = /\.json$/i.test(notesFile.path)
    ? `${JSON.stringify(all, undefined, 2)}\n`
    : notesPage(`Conversion notes for ${title}`, all, kept);
  await write(terminal, notesFile, page);
}

/** Of notes that say the same in several instruments, the first, with how many others there are. */
function oneOfEach(notes: readonly LineNote[]): LineNote[] {
  const found = new Map<string, { note: LineNote; files: Set<string | undefined>; count: number }>();
  for (const note of notes) {
    const key = `${note.kind} ${note.message.replace(/\d+(?:\.\d+)?|"[^"]*"/g, '…')}`;
    const known = found.get(key);
    if (known) {
      known.files.add(note.file);
      known.count++;
    } else found.set(key, { note, files: new Set([note.file]), count: 1 });
  }
  return [...found.values()].map(({ note, files, count }) =>
    count === 1
      ? note
      : {
          ...note,
          message: `${note.message} The same holds in ${counted(count, 'place')} of ${counted(files.size, 'instrument')}.`,
        },
  );
}
