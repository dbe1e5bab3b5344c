import type { Instrument } from '../model/instrument';
import type { ConversionNote, NoteKind } from '../model/notes';

/** A note with the line of the input that it is about. */
export interface LineNote {
  kind: NoteKind;
  message: string;
  line: number;
}

/** Notes with lines, in the order of the text. */
export function notesByLine(instrument: Instrument, notes: readonly ConversionNote[]): LineNote[] {
  return notes
    .map(({ kind, message, source, start }) => ({
      kind,
      message,
      line: instrument.sources[source]?.positionAt(start).line ?? 1,
    }))
    .sort((a, b) => a.line - b.line);
}

const headings: Readonly<Record<NoteKind, string>> = {
  assumed: 'Assumed',
  approximated: 'Written in another way',
  dropped: 'Left out',
  ignored: 'Not used',
};

/**
 * Conversion notes as a page for people: counts at the top, then each note with its line. `kept` is the number of values
 * that were carried over exactly, where it is known.
 */
export function notesPage(title: string, notes: readonly LineNote[], kept?: number): string {
  const kinds = (Object.keys(headings) as NoteKind[]).filter((kind) =>
    notes.some((note) => note.kind === kind),
  );
  const counts = [
    ...(kept === undefined ? [] : [`- Carried over exactly: ${kept}`]),
    ...kinds.map((kind) => `- ${headings[kind]}: ${notes.filter((note) => note.kind === kind).length}`),
  ];
  const parts = kinds.map((kind) => {
    const lines = notes
      .filter((note) => note.kind === kind)
      .map((note) => `- Line ${note.line}: ${note.message}`);
    return `\n## ${headings[kind]}\n\n${lines.join('\n')}\n`;
  });
  const all = kinds.length === 0 ? 'Everything was carried over exactly.\n\n' : '';
  return `# ${title}\n\n${all}${counts.join('\n')}\n${parts.join('')}`.replace(/\n+$/, '\n');
}
