import type { Files } from '../model/files';
import type { ConversionNote } from '../model/notes';
import { joinPath } from '../model/paths';
import type { SampleFacts } from '../model/samples';
import type { Steps } from '../model/steps';
import type { Span } from '../model/text/span';
import { mainSpan } from '../model/text/span';
import { isHtmlTable } from '../table/cells/markup/htmlCells';
import type { TableReading, ZoneReading } from '../table/readTable';
import { openZoneTableInSteps, regionsOf } from '../table/readTable';
import type { ColumnMeaning } from '../trade/meaning';
import { noteName } from '../trade/readings/notePatterns';
import { xmlTable } from '../xml/tableInXml';
import { measuredPitches } from './measuring/measuredPitches';
import { doubtsOfReading } from './notations/doubtsOfReading';
import { audioFilesBelow } from './samples/audioFilesBelow';
import { SampleFinder } from './samples/sampleFinder';
import type { SampleChoice } from './samples/sampleNotes';
import { notesOnSamples, questionOf } from './samples/sampleNotes';
import { writtenPath } from './samples/writtenPath';
import type { AfterStep } from './takeSteps';
import { takeSteps } from './takeSteps';

/** After so many names a step ends. */
const namesInStep = 2000;

export interface TableFolders {
  /** The path by which the table is known. */
  path: string;
  /** Which note name the table gives to key 60; found by evidence where nothing is said. */
  middleC?: 'C3' | 'C4' | 'C5';
  /** The folder in which the samples are looked for, with all below it. */
  samplesFolder: string;
  /** The folder that the sample paths are written from. */
  outputFolder: string;
  /** What finds samples in that folder, where it was made for another table already. */
  finder?: SampleFinder | undefined;
  /** The `default_path` that is put before them where they are written. */
  defaultPath?: string;
  /** Meanings that a person has set for columns, by position from 0. */
  columns?: ReadonlyMap<number, ColumnMeaning>;
  /** Scales that a person has set for columns, by position from 0. */
  scales?: ReadonlyMap<number, string>;
  /** Files that a person has chosen for sample names of the table, as paths from the output folder. */
  samples?: ReadonlyMap<string, string>;
}

/** The zones of a table, and what it leaves open about its samples. */
export interface ZonesWithSamples extends ZoneReading {
  questions: SampleChoice[];
}

/** So much of the work of reading a table is done when its zones are known. */
const zonesShare = 0.85;

/** Reads a zone table as {@link readZonesWithSamples} does, and makes regions of its zones. */
export async function readTableWithSamples(
  files: Files,
  written: string,
  folders: TableFolders,
  afterStep: AfterStep = () => {},
): Promise<ZonesWithSamples & TableReading> {
  const reading = await readZonesWithSamples(files, written, folders, (share) =>
    afterStep(share * zonesShare),
  );
  const building = regionsOf(reading);
  const instrument = await takeSteps(building, (share) => afterStep(zonesShare + share * (1 - zonesShare)));
  const doubts = await takeSteps(doubtsOfReading(instrument), () => afterStep(1));
  return { ...reading, instrument, notes: [...reading.notes, ...doubts] };
}

/**
 * Reads a zone table, its samples looked up in a folder, so that paths lead to the files and their root keys, or
 * the pitches measured in them, tell the octave. Lets other work run in between; `afterStep` may throw to end it.
 */
export async function readZonesWithSamples(
  files: Files,
  written: string,
  folders: TableFolders,
  afterStep: AfterStep = () => {},
): Promise<ZonesWithSamples> {
  const inXml = isHtmlTable(written) ? undefined : xmlTable(written);
  const text = inXml?.table ?? written;
  const found =
    folders.finder ??
    new SampleFinder(await audioFilesBelow(files, folders.samplesFolder), folders.outputFolder);
  const opening = openZoneTableInSteps(text, {
    path: folders.path,
    ...(inXml && { said: inXml.said }),
    ...(folders.columns && { columns: folders.columns }),
  });
  const table = await takeSteps(opening, (share) => afterStep(share * 0.3));
  const names = await takeSteps(table.sampleNamesInSteps(), (share) => afterStep(0.3 + share * 0.05));
  const named = await takeSteps(lookUp(names, found), (share) => afterStep(0.35 + share * 0.05));
  const facts = await found.facts(files, named);
  const pitches = needsPitches(text, folders, facts)
    ? await measuredPitches(files, pathsOf(facts.keys(), found))
    : undefined;
  const questions = new Map<string, { question: SampleChoice; message: string }>();
  const readingSteps = table.zonesInSteps({
    ...(folders.middleC && { middleC: folders.middleC }),
    ...(folders.scales && { scales: folders.scales }),
    rootKeyOf: (name) => facts.get(name)?.rootKey ?? undefined,
    ...(pitches && { pitchOf: (name: string) => pitches.get(name) }),
    rateOf: (name) => facts.get(name)?.sampleRate,
    framesOf: (name) => facts.get(name)?.frames,
    loopOf: (name) => facts.get(name)?.loops[0],
    resolveSample(name) {
      const sample = found.look(name);
      const question = questionOf(name, sample, folders.outputFolder);
      if (question) questions.set(name, question);
      const chosen = folders.samples?.get(name);
      if (chosen !== undefined) return writtenPath(joinPath(folders.outputFolder, chosen), folders);
      return sample.paths[0] && writtenPath(sample.paths[0], folders);
    },
  });
  const reading = await takeSteps(readingSteps, (share) => afterStep(0.4 + share * 0.6));
  const open = [...questions].filter(([name]) => !folders.samples?.has(name));
  const notes = notesOnSamples(
    open.map(([name, { message }]) => ({ name, message })),
    (name) => firstCell(reading, name),
  );
  return {
    ...reading,
    notes: [
      ...(inXml?.commented ?? []).map((span) => commentedRow(written, span)),
      ...(inXml?.around ?? []).map((span) => rangeAround(written, span)),
      ...reading.notes,
      ...notes,
    ],
    questions: [...questions].map(([name, { question }]) =>
      folders.samples?.has(name) ? { ...question, taken: folders.samples.get(name) } : question,
    ),
  };
}

/** That a row is commented out. */
function commentedRow(text: string, { start, end }: { start: number; end: number }): ConversionNote {
  const row = text.slice(start, Math.min(end, start + longestRow)).trim();
  const message = `The row "${row}" is commented out, so it is left out.`;
  return { kind: 'ignored', ...mainSpan(start, end), message };
}

/** That a range on an element around rows is lost. */
function rangeAround(text: string, { start, end }: { start: number; end: number }): ConversionNote {
  const message = `${text.slice(start, end)}" stands on an element around rows and is not read. Put it into a column of its own.`;
  return { kind: 'dropped', ...mainSpan(start, end), message };
}

/** So much of a row is shown. */
const longestRow = 80;

/** A note name such as `C#3` in a table. */
const noteInTable = new RegExp(String.raw`(?<![\p{L}\d])${noteName}-?\d(?![\d\p{L}])`, 'iu');
/** Enough of a table to see whether it names notes. */
const looked = 100_000;

/** Whether it takes the pitch of samples to tell the octave: notes are named, and no file says its root key. */
function needsPitches(
  text: string,
  { middleC }: TableFolders,
  facts: ReadonlyMap<string, SampleFacts>,
): boolean {
  if (middleC !== undefined || facts.size === 0 || !noteInTable.test(text.slice(0, looked))) return false;
  // One root key in all files is the one that nobody set.
  return new Set(Array.from(facts.values(), ({ rootKey }) => rootKey)).size === 1;
}

function pathsOf(names: Iterable<string>, found: SampleFinder): Map<string, string> {
  const paths = new Map<string, string>();
  for (const name of names) {
    const path = found.look(name).paths[0];
    if (path !== undefined) paths.set(name, path);
  }
  return paths;
}

/** Looks names up and answers those that lead to a file; what was found for them is remembered. */
function* lookUp(names: ReadonlySet<string>, found: SampleFinder): Steps<string[]> {
  const leading: string[] = [];
  let looked = 0;
  for (const name of names) {
    if (found.find(name).length > 0) leading.push(name);
    if (++looked % namesInStep === 0) yield looked / names.size;
  }
  return leading;
}

function firstCell({ source }: ZoneReading, name: string): Span {
  const start = Math.max(0, source.text.indexOf(name));
  return mainSpan(start, start + name.length);
}
