import type { Files } from '../model/files';
import type { TextEdit } from '../model/finding';
import type { Notation } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import type { Source } from '../model/source';
import { readInstrument } from '../workspace/analyse';
import type { IncludeStore } from '../workspace/includeStore';
import type { MiddleC } from '../workspace/projectSettings';
import { readTableWithSamples } from '../workspace/readTableWithSamples';

/** Where the regions of a table go. */
export interface TableTarget {
  /** The text of the document, and the stretch that the regions take the place of. */
  text: string;
  start: number;
  end: number;
  notation: Notation;
  /** The path of the document, absolute with `/`; `undefined` for one that is no file. */
  path: string | undefined;
  /** The document's folder, in which samples are looked for. */
  folder: string | undefined;
}

/** The regions of a table as a change to a document. */
export interface ConvertedTable {
  /** What to write in the place of the stretch; `undefined` where the change reaches further, or there is a problem. */
  insertText: string | undefined;
  /** The change as edits of the document's text; empty where there is a problem. */
  edits: TextEdit[];
  notes: ConversionNote[];
  /** The table, that the spans of notes are in. */
  table: Source;
  regionCount: number;
  problem: string | undefined;
}

/** Makes the regions of a copied zone table ready to be written into a document, in its notation and style. */
export async function convertTable(
  files: Files,
  includes: IncludeStore,
  table: string,
  target: TableTarget,
  middleC: MiddleC,
): Promise<ConvertedTable> {
  const { text, start, end, notation, folder } = target;
  // The change is worked out on the text without the stretch that it replaces.
  const without = text.slice(0, start) + text.slice(end);
  const path = target.path ?? '';
  const instrument =
    target.path === undefined
      ? notation.read(without, { path })
      : await readInstrument({ path, text: without, notation }, includes);
  const control = instrument.controlAt(0, start);
  const reading = await readTableWithSamples(folder === undefined ? noFiles : files, table, {
    path: 'table',
    ...(middleC !== 'auto' && { middleC }),
    samplesFolder: folder ?? '',
    outputFolder: folder ?? '',
    defaultPath: control.defaultPath,
  });
  const source = reading.instrument.sources[0] as Source;
  const regionCount = reading.instrument.regions.length;
  const notes = [...reading.notes, ...keyOffsetNote(control.keyOffset)];
  if (reading.problem !== undefined) {
    return { insertText: undefined, edits: [], table: source, regionCount, notes, problem: reading.problem };
  }
  const edited = notation.edit(instrument, { kind: 'insert', offset: start, instrument: reading.instrument });
  const removed = end - start;
  const moved = edited.edits.map((edit) => ({
    ...edit,
    start: edit.start > start ? edit.start + removed : edit.start,
    end: edit.end > start ? edit.end + removed : edit.end,
  }));
  return {
    insertText: insertTextOf(edited.edits, without, start),
    edits: withRemoval(moved, start, end),
    table: source,
    regionCount,
    notes: [...notes, ...edited.notes],
    problem: undefined,
  };
}

/** A document that moves all keys moves those of the table too. */
function keyOffsetNote(keyOffset: number): ConversionNote[] {
  if (keyOffset === 0) return [];
  const message = `note_offset and octave_offset of the document move every key by ${keyOffset}; the keys are written as the table gives them.`;
  return [{ kind: 'assumed', source: 0, start: 0, end: 0, message }];
}

const noFiles: Files = {
  stat: async () => undefined,
  list: async () => undefined,
  open: async () => undefined,
};

/** What is written at an offset, where an edit does no more than that or than to indent the line anew. */
function insertTextOf(edits: readonly TextEdit[], text: string, offset: number): string | undefined {
  const [edit, ...more] = edits;
  if (!edit || more.length > 0 || edit.end !== offset) return undefined;
  const replaced = text.slice(edit.start, offset);
  if (edit.newText.startsWith(replaced)) return edit.newText.slice(replaced.length);
  return replaced.trim() === '' ? edit.newText.trimStart() : undefined;
}

/** The edits with the stretch taken out, in one with an edit that touches it. */
function withRemoval(edits: readonly TextEdit[], start: number, end: number): TextEdit[] {
  if (start === end) return [...edits];
  const touching = edits.find((edit) => edit.end === start);
  if (!touching) return [...edits, { source: 0, start, end, newText: '' }];
  return edits.map((edit) => (edit === touching ? { ...edit, end } : edit));
}
