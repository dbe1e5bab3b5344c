import type { NoteKind } from '../model/notes';
import type { LineNote } from '../model/writing/lineNotes';
import { foldNotes } from '../model/writing/lineNotes';
import { escaped, markdownTable } from './sampleReport/markdown';

const headings: Readonly<Record<NoteKind, string>> = {
  assumed: 'Assumed',
  approximated: 'Written in another way',
  dropped: 'Left out',
  ignored: 'Not used',
};

const explanations: Readonly<Record<NoteKind, string>> = {
  assumed: 'The text does not say these, so what is usual was taken, or it looks like a slip. Check them.',
  approximated: 'These were carried over, but not in the same form.',
  dropped: 'These have no place in what was written.',
  ignored: 'These were not read, or have no effect.',
};

/**
 * Conversion notes as a Markdown page for people: counts at the top, then a table for each kind, notes that say the same in
 * one row. `kept` is the number of values that were carried over exactly, where it is known.
 */
export function notesPage(title: string, notes: readonly LineNote[], kept?: number): string {
  const kinds = Object.keys(headings) as NoteKind[];
  const count = (kind: NoteKind) => notes.filter((note) => note.kind === kind).length;
  const parts = [
    `# ${escaped(title).replaceAll('#', '\\#')}`,
    ...(notes.length === 0 ? ['Everything was carried over exactly.'] : []),
    [
      ...(kept === undefined ? [] : [`- Carried over exactly: ${kept}`]),
      ...kinds.map((kind) => `- ${headings[kind]}: ${count(kind)}`),
    ].join('\n'),
  ];
  for (const kind of kinds) {
    const folded = foldNotes(notes.filter((note) => note.kind === kind));
    if (folded.length === 0) continue;
    const rows = folded.map(({ note, count: times, lines }) => [
      note.file === undefined ? lines : `${note.file}: ${lines}`,
      note.message,
      valueText(note, times),
    ]);
    parts.push(`## ${headings[kind]}`, explanations[kind]);
    parts.push(markdownTable(['Lines', 'What and why', 'Value'], rows));
  }
  return `${parts.join('\n\n')}\n`;
}

/** The parameter of a note with its value; the first of several that are told as one. */
function valueText({ parameter, value }: LineNote, times: number): string {
  const text = [parameter, value].filter((part) => part !== undefined).join('=');
  return times > 1 && value !== undefined ? `${text} and ${times - 1} more` : text;
}
