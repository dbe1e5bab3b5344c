import { joinEdits, replacing } from '../model/editing/edits';
import type { Files } from '../model/files';
import type { TextEdit } from '../model/finding';
import type { FormatStyle } from '../model/formatStyle';
import { usualFormatStyle } from '../model/formatStyle';
import type { Instrument } from '../model/instrument';
import type { Notation } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import type { Steps } from '../model/steps';
import { inPart } from '../model/steps';
import type { Source } from '../model/text/source';
import { mainSpan } from '../model/text/span';
import { lineEndAt } from '../model/text/textLayout';
import type { GroupedZones } from '../table/zones/groups/sharedValues';
import { instrumentOfZones } from '../table/zones/instrumentOfZones';
import type { ColumnMeaning } from '../trade/meaning';
import { readInstrument } from '../workspace/analyse';
import type { IncludeStore } from '../workspace/files/includeStore';
import type { MiddleCSetting } from '../workspace/projectSettings';
import type { ZonesWithSamples } from '../workspace/readTableWithSamples';
import { readZonesWithSamples } from '../workspace/readTableWithSamples';
import type { SampleStore } from '../workspace/samples/sampleStore';
import type { AfterStep } from '../workspace/takeSteps';
import { takeSteps } from '../workspace/takeSteps';
import { arrangeInGroups } from './tableGroups';
import { layOutInserted, regionLayoutOf } from './tableLayout';
import { styleZones } from './tableStyle';
import type { RegionUpdate, ZoneMatches } from './tableUpdate';
import { goneNote, matchZones, updateRegions } from './tableUpdate';

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
  /** Where a notation that counts in seconds finds what it needs to know of samples; missing for one that needs nothing. */
  sampleStore?: SampleStore;
  /** The style that is set for the document; where nothing is set, regions follow those that are there. */
  format?: Partial<FormatStyle>;
}

/** So much of the work is done when the table is read. */
const readingShare = 0.8;

/** What a person has decided about a table. */
export interface TableChoices {
  /** The note name of key 60; `auto`: found by evidence. */
  middleC: MiddleCSetting;
  /** Meanings of columns, by position from 0. */
  columns?: ReadonlyMap<number, ColumnMeaning>;
  /** Scales of columns of numbers, by position from 0. */
  scales?: ReadonlyMap<number, string>;
  /** Kinds of the suggested groupings that are taken. */
  groupings?: ReadonlySet<string>;
  /** Files for sample names of the table, as paths from the document's folder. */
  samples?: ReadonlyMap<string, string>;
  /** Whether regions with the same samples are changed rather than written again. */
  update?: boolean;
  /** Whether an update takes regions out that the table has no row for. */
  takeOut?: boolean;
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
  /** How the table was understood. */
  reading: ZonesWithSamples;
  regionCount: number;
  /** How many rows have a region with the same sample in the document. */
  matchCount: number;
  /** Of an update: how many regions change, stay as they are, and are new. */
  changedCount: number;
  unchangedCount: number;
  addedCount: number;
  /** Of an update: how many regions of the document the table has no row for. */
  goneCount: number;
  problem: string | undefined;
}

/**
 * Makes the regions of a copied zone table ready to be written into a document, in its notation and style. Other work goes
 * on in between; `afterStep` may throw to end it.
 */
export async function convertTable(
  files: Files,
  includes: IncludeStore,
  table: string,
  target: TableTarget,
  choices: TableChoices,
  afterStep: AfterStep = () => {},
): Promise<ConvertedTable> {
  const { text, start, end, folder } = target;
  // The change is worked out on the text without the stretch that it replaces.
  const without = text.slice(0, start) + text.slice(end);
  const document = await readDocument(target, without, includes);
  // What an update adds goes behind the regions that are there, wherever the cursor is.
  const offset = choices.update ? endOfRegions(document, without, start) : start;
  const control = document.controlAt(0, offset);
  const reading = await readTable(files, table, target, choices, control.defaultPath, (share) =>
    afterStep(share * readingShare),
  );
  const notes = [...reading.notes, ...keyOffsetNote(control.keyOffset)];
  const about = {
    table: reading.source,
    reading,
    regionCount: reading.grouped?.zones.count ?? 0,
    problem: reading.problem,
  };
  if (!reading.grouped)
    return {
      ...about,
      ...{ insertText: undefined, edits: [], notes },
      ...{ matchCount: 0, changedCount: 0, unchangedCount: 0, addedCount: 0, goneCount: 0 },
    };
  if (target.sampleStore && folder !== undefined)
    await lookAtSamples(target.sampleStore, folder, reading.grouped.zones.samplePaths());
  const changing = changeOf({ document, text: without, offset }, target, reading, reading.grouped, choices);
  const change = await takeSteps(changing, (share) => afterStep(readingShare + share * (1 - readingShare)));
  return {
    ...about,
    ...change,
    insertText: insertTextOf(change.edits, without, start),
    edits: withRemoval(movedBehind(change.edits, start, end - start), start, end),
    notes: [...notes, ...change.notes],
  };
}

/** The document as it is without the stretch that the regions take the place of. */
async function readDocument(
  { path, notation, sampleStore }: TableTarget,
  text: string,
  includes: IncludeStore,
): Promise<Instrument> {
  if (path === undefined) return notation.read(text, { path: '' });
  return readInstrument({ path, text, notation, ...(sampleStore && { samples: sampleStore }) }, includes);
}

function readTable(
  files: Files,
  table: string,
  { folder }: TableTarget,
  { middleC, columns, scales, samples }: TableChoices,
  defaultPath: string,
  afterStep: AfterStep,
): Promise<ZonesWithSamples> {
  return readZonesWithSamples(
    folder === undefined ? noFiles : files,
    table,
    {
      path: 'table',
      ...(middleC !== 'auto' && { middleC }),
      ...(columns && { columns }),
      ...(scales && { scales }),
      ...(samples && { samples }),
      samplesFolder: folder ?? '',
      outputFolder: folder ?? '',
      defaultPath,
    },
    afterStep,
  );
}

/** Where regions are written: a document, its text, and the offset for new ones. */
interface DocumentPlace {
  document: Instrument;
  text: string;
  offset: number;
}

/** The edits that bring regions up to date and add those that are new, with how many of each there are. */
function* changeOf(
  place: DocumentPlace,
  target: TableTarget,
  reading: ZonesWithSamples,
  zones: GroupedZones,
  choices: TableChoices,
): Steps<
  Pick<
    ConvertedTable,
    'edits' | 'notes' | 'matchCount' | 'changedCount' | 'unchangedCount' | 'addedCount' | 'goneCount'
  >
> {
  const { document, offset } = place;
  const chosen = reading.suggestions.filter(({ kind }) => choices.groupings?.has(kind));
  const { grouped, notes } = arrangeInGroups(zones, chosen);
  const { defaultPath } = document.controlAt(0, offset);
  yield 0;
  const matches =
    document.regions.length === 0
      ? undefined
      : yield* inPart(matchZones(grouped, document, defaultPath), 0, 0.4);
  const matchCount = matches?.matched.length ?? 0;
  const updating = choices.update === true && matchCount > 0 ? matches : undefined;
  const update = updating && (yield* inPart(updated(target.notation, document, updating, reading), 0.4, 0.6));
  const added = updating?.others ?? grouped;
  const addedCount = added.groups.reduce((sum, group) => sum + group.zones.length, 0);
  const inserted =
    addedCount > 0
      ? yield* inPart(insertion(place, target, added, reading.source), 0.6, 1)
      : { edits: [], notes: [] };
  const gone = updating?.gone ?? [];
  const isTakenOut = choices.takeOut === true;
  const removals = (isTakenOut ? gone : []).map((header) =>
    target.notation.edit(document, { kind: 'removeHeader', header }),
  );
  return {
    edits: joinEdits([
      ...(update?.edits ?? []),
      ...inserted.edits,
      ...removals.flatMap(({ edits }) => edits),
    ]),
    notes: [
      ...notes,
      ...(updating?.notes ?? []),
      ...(update?.notes ?? []),
      ...inserted.notes,
      ...(gone.length > 0 ? [goneNote(document, gone, isTakenOut)] : []),
      ...removals.flatMap(({ notes }) => notes),
    ],
    matchCount,
    changedCount: update?.changed ?? 0,
    unchangedCount: update?.unchanged ?? 0,
    addedCount,
    goneCount: gone.length,
  };
}

/** Edits of a text from which a stretch was taken out, as edits of that text with it. */
function movedBehind(edits: readonly TextEdit[], start: number, removed: number): TextEdit[] {
  return edits.map((edit) => ({
    ...edit,
    start: edit.start > start ? edit.start + removed : edit.start,
    end: edit.end > start ? edit.end + removed : edit.end,
  }));
}

/** Has samples looked at, so that what they say is at hand when they are written. */
async function lookAtSamples(store: SampleStore, folder: string, paths: ReadonlySet<string>): Promise<void> {
  // All are asked for before any is waited for.
  for (const path of paths) store.lookup(folder).state(path);
  for (const path of paths) await store.fetchState(folder, path);
}

function updated(
  notation: Notation,
  document: Instrument,
  { matched }: ZoneMatches,
  { columns, notes }: ZonesWithSamples,
): Steps<RegionUpdate> {
  const has = (meaning: ColumnMeaning) => columns.some((one) => one.meaning === meaning);
  const cleared = [
    ...(has('volume') || has('attenuation') ? ['volume'] : []),
    ...(has('pan') ? ['pan'] : []),
    ...(has('tune') || has('transpose') ? ['tune', 'transpose'] : []),
    ...(has('offset') ? ['offset'] : []),
  ];
  const dropped = notes.filter(({ kind }) => kind === 'dropped');
  return updateRegions(notation, document, matched, cleared, ({ start, end }) =>
    dropped.some((note) => note.start >= start && note.start <= end),
  );
}

/** Behind the last region of the main file; where there is none, `otherwise`. */
function endOfRegions(document: Instrument, text: string, otherwise: number): number {
  const last = document.regions.findLast((region) => document.headerSource(region) === 0);
  return last === undefined ? otherwise : lineEndAt(text, document.bodySpan(last).end);
}

/** The edits that write regions at an offset, in the style of the document. */
function* insertion(
  { document, text, offset }: DocumentPlace,
  { notation, path, format = {} }: TableTarget,
  zones: GroupedZones,
  table: Source,
): Steps<{ edits: TextEdit[]; notes: ConversionNote[] }> {
  const { grouped, writing } = yield* inPart(styleZones(zones, document), 0, 0.2);
  const instrument = yield* inPart(instrumentOfZones(table, grouped, writing), 0.2, 0.6);
  const { edits, notes } = yield* inPart(notation.insertInSteps(document, offset, instrument), 0.6, 0.9);
  const [edit, ...more] = edits;
  const found = regionLayoutOf(document);
  const alignColumns = format.alignColumns === true || found.alignColumns;
  const headers = format.headers ?? found.headers;
  if (!edit || more.length > 0 || (!alignColumns && headers === 'regionsInline')) return { edits, notes };
  const style = { ...usualFormatStyle, ...format, headers, alignColumns, opcodeOrder: 'keep' } as const;
  return { edits: [yield* inPart(layOutInserted(notation, text, path ?? '', edit, style), 0.9, 1)], notes };
}

/** A document that moves all keys moves those of the table too. */
function keyOffsetNote(keyOffset: number): ConversionNote[] {
  if (keyOffset === 0) return [];
  const message = `The document's note_offset and octave_offset move every key by ${keyOffset}. The keys are written as in the table.`;
  return [{ kind: 'assumed', ...mainSpan(0, 0), message }];
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
  if (start === end || edits.some((edit) => edit.start <= start && edit.end >= end)) return [...edits];
  const touching = edits.find((edit) => edit.end === start);
  if (!touching) return [...edits, replacing(mainSpan(start, end), '')];
  return edits.map((edit) => (edit === touching ? { ...edit, end } : edit));
}
