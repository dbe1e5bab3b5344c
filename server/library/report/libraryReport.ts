import type { Files } from '../../model/files';
import { joinPath, nameOf, relativePath } from '../../model/paths';
import { readWholeText } from '../../workspace/files/readWhole';
import { isCurrent, isOfThisForm, readState, settingsSum } from '../build/buildState';
import type { InstrumentRecord } from '../build/instrumentRecord';
import { parseRecord } from '../build/instrumentRecord';
import type { LibraryInstrument, ResolvedLibrary } from '../libraryInstrument';
import type { LibraryRow, RowState } from './libraryRow';
import { rowOf } from './rowOf';

/** An instrument in an overview, with the record of its last build where there is one. */
export interface ReportedInstrument {
  row: LibraryRow;
  record?: InstrumentRecord;
}

/** A library as its builds have left it. */
export interface LibraryReport {
  title: string;
  instruments: ReportedInstrument[];
}

/**
 * What is known of each instrument of a library, in its order: the last build, and whether it still holds, where that is not
 * known already as it is when a build has just been done.
 */
export async function libraryReport(
  files: Files,
  library: ResolvedLibrary,
  isJustBuilt = false,
): Promise<LibraryReport> {
  const instruments: ReportedInstrument[] = [];
  for (const one of library.instruments) {
    const record = await recordAt(files, joinPath(library.output, `records/${one.fileName}.json`));
    const state = record && !isJustBuilt ? await stateOf(files, library, one, record) : record?.state;
    instruments.push(record ? { row: rowOf(record, state), record } : { row: unbuiltRow(library, one) });
  }
  return { title: library.title, instruments };
}

async function stateOf(
  files: Files,
  library: ResolvedLibrary,
  one: LibraryInstrument,
  record: InstrumentRecord,
): Promise<RowState> {
  if (record.state === 'failed') return 'failed';
  const state = await readState(files, library, one.fileName);
  if (!state || !isOfThisForm(state)) return 'stale';
  const settings = await settingsSum(library, one, state.steps);
  return (await isCurrent(files, library, state, settings)) ? 'built' : 'stale';
}

function unbuiltRow({ folder }: ResolvedLibrary, one: LibraryInstrument): LibraryRow {
  const { name, fileName, source, preset, facts, pairing } = one;
  return {
    name,
    fileName,
    state: 'missing',
    source: relativePath(folder, source) + (preset === undefined ? '' : `#${preset}`),
    errors: 0,
    warnings: 0,
    information: 0,
    assumed: 0,
    approximated: 0,
    dropped: 0,
    ...(facts.licence !== undefined && { licence: facts.licence }),
    doubts: pairing?.doubts ?? [],
    shapes: [],
  };
}

/**
 * What several machines have built of a library, each a part, from their output folders: the instruments by name. `problems`
 * tells of folders without records and of instruments that two folders tell of differently; the first then counts.
 */
export async function mergedReport(
  files: Files,
  title: string,
  folders: readonly string[],
): Promise<LibraryReport & { problems: string[] }> {
  const problems: string[] = [];
  const records = new Map<string, { record: InstrumentRecord; text: string }>();
  for (const folder of folders) {
    const names = ((await files.list(joinPath(folder, 'records'))) ?? []).map(({ name }) => name).sort();
    if (names.length === 0) problems.push(`${folder}: there are no records of a build in it.`);
    for (const name of names) {
      const path = joinPath(folder, `records/${name}`);
      const record = await recordAt(files, path);
      if (!record) {
        problems.push(`${path}: this is no record of a build that this version knows.`);
        continue;
      }
      const text = JSON.stringify(record);
      const known = records.get(nameOf(path));
      if (known && known.text !== text)
        problems.push(`${record.name}: two folders tell of it differently; the first counts.`);
      if (!known) records.set(nameOf(path), { record, text });
    }
  }
  const sorted = [...records].sort(([a], [b]) => (a < b ? -1 : 1));
  const instruments = sorted.map(([, { record }]) => ({ row: rowOf(record), record }));
  return { title, instruments, problems };
}

async function recordAt(files: Files, path: string): Promise<InstrumentRecord | undefined> {
  const whole = await readWholeText(files, path);
  return whole.kind === 'text' ? parseRecord(whole.text) : undefined;
}
