import type { Instrument } from '../instrument';
import type { ConversionNote, NoteKind } from '../notes';
import { nameOf } from '../paths';

/** A note with the line of the text that it is about, counted from 1. */
export interface LineNote {
  kind: NoteKind;
  message: string;
  line: number;
  /** The included file that the line is in; missing for the main file. */
  file?: string;
  /** The parameter and the value that it is about, as they stand in the text, where it is about one. */
  parameter?: string;
  value?: string;
}

/** Notes that say the same of several values. */
export interface FoldedNote {
  /** The first of them. */
  note: LineNote;
  count: number;
  /** The lines in order, with runs of them in one: `3–5, 9`. */
  lines: string;
}

/** Notes with their lines, in the order of the text. */
export function lineNotes(instrument: Instrument, notes: readonly ConversionNote[]): LineNote[] {
  return notes
    .map(({ kind, message, source: at, start, end }) => {
      const source = instrument.sources[at];
      const parameter = parameterAbout(instrument, at, start, end);
      return {
        kind,
        message,
        line: source?.positionAt(start).line ?? 1,
        ...(at > 0 && source && { file: nameOf(source.path) }),
        ...(parameter >= 0 && {
          parameter: instrument.names.text(instrument.name(parameter)),
          value: textOfValue(instrument, parameter),
        }),
      };
    })
    .sort((a, b) => (a.file ?? '').localeCompare(b.file ?? '') || a.line - b.line);
}

/** How soon a person should be told of what happened to a value. */
const ranks: Readonly<Record<NoteKind, number>> = { dropped: 0, assumed: 1, approximated: 2, ignored: 3 };

/** Notes with what is lost or may be wrong before what changes nothing, else in their order. */
export function importantFirst(notes: readonly LineNote[]): LineNote[] {
  return [...notes].sort((one, other) => ranks[one.kind] - ranks[other.kind]);
}

/** The parameter whose name and value, or whose value alone, a stretch of text is; −1 where it is none. */
export function parameterAbout(instrument: Instrument, source: number, start: number, end: number): number {
  const last = instrument.parameterAt(source, start);
  for (let parameter = last; parameter >= 0 && parameter > last - 4; parameter--) {
    const whole = instrument.parameterSpan(parameter);
    const value = instrument.valueSpan(parameter);
    if (whole.source !== source || end !== whole.end) continue;
    if (start === whole.start || start === value.start) return parameter;
  }
  return -1;
}

function textOfValue(instrument: Instrument, parameter: number): string {
  const { source, start, end } = instrument.valueSpan(parameter);
  const text = instrument.sources[source]?.text.slice(start, end) ?? '';
  return text === '' ? instrument.valueText(parameter) : text;
}

/** Puts notes together that say the same but for the value that they are about; the order is that of the first of each. */
export function foldNotes(notes: readonly LineNote[]): FoldedNote[] {
  const groups = new Map<string, LineNote[]>();
  for (const note of notes) {
    const key = `${note.kind}\n${note.file ?? ''}\n${note.parameter ?? ''}\n${withoutValues(note)}`;
    const group = groups.get(key);
    if (group) group.push(note);
    else groups.set(key, [note]);
  }
  return [...groups.values()].map((group) => ({
    note: group[0],
    count: group.length,
    lines: runsOf(group.map(({ line }) => line)),
  }));
}

function withoutValues({ message, value }: LineNote): string {
  const without = value ? message.replaceAll(value, '…') : message;
  return without.replace(/"[^"]*"/g, '"…"').replace(/(?<![\p{L}\p{N}_])[-+]?\d+(?:\.\d+)?/gu, '…');
}

/** Lines that are named one by one; more of them are counted. */
const mostRuns = 12;

function runsOf(lines: readonly number[]): string {
  const runs: [first: number, last: number][] = [];
  for (const line of lines) {
    const run = runs[runs.length - 1];
    if (run && line <= run[1] + 1) run[1] = line;
    else runs.push([line, line]);
  }
  const shown = runs
    .slice(0, mostRuns)
    .map(([first, last]) => (first === last ? String(first) : `${first}–${last}`));
  const more = runs.length - shown.length;
  return shown.join(', ') + (more > 0 ? ` and ${more} more places` : '');
}
