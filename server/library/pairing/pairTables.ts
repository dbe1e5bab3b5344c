import { folderOf, isWithin, nameOf, relativePath } from '../../model/paths';
import { byCount, counted } from '../../model/wording/counted';
import type { InstrumentEntry, LeftOut, Pairing } from '../libraryFile';
import { nameLikeness } from './instrumentNames';
import { folderName, nameOfTable, titleOfTable } from './namesOfTables';
import type { TableCandidate } from './tableCandidates';

/** Names are taken to mean the same from this likeness on. */
const alike = 0.6;
/** Of its samples so many have to be there for a table to be paired. */
const leastFound = 0.5;
/** Folders that a message names. */
const mostNamed = 4;

/** Tables with the folders of their samples, and those for which none was found. */
export interface PairedTables {
  entries: InstrumentEntry[];
  leftOut: LeftOut[];
  /** Absolute folders whose audio belongs to the tables. */
  folders: Set<string>;
}

/** A table on its way to its folder. */
interface Choice {
  table: TableCandidate;
  folders: string[];
  chosen?: string;
  because: string[];
  doubts: string[];
}

/**
 * Says which folder holds the samples of each table, by the files that their names lead to, then by where the table stands,
 * then by the names of table and folder, and at last by which folders are left. `folder` is that of the library.
 */
export function pairTables(folder: string, tables: readonly TableCandidate[]): PairedTables {
  const leftOut: LeftOut[] = [];
  const shown = (path: string) => relativePath(folder, path);
  const choices: Choice[] = [];
  for (const table of withoutCopies(tables, leftOut, shown)) {
    const { names, best } = table.matches;
    const found = best[0]?.found ?? 0;
    if (found >= names * leastFound && found > 0)
      choices.push({ table, folders: best.map((one) => one.folder), because: [], doubts: [] });
    else
      leftOut.push({
        path: shown(table.path),
        because: `Of its ${counted(names, 'sample')} ${found === 0 ? 'none is' : `only ${found} can be`} found here.`,
      });
  }
  for (const choice of choices) chooseByPlace(choice, shown) || chooseByName(choice);
  const taken = new Set(choices.flatMap(({ chosen }) => chosen ?? []));
  for (const choice of choices)
    if (choice.chosen === undefined) chooseWhatIsLeft(choice, taken, shown, leftOut);
  const paired = choices.filter((one): one is Choice & { chosen: string } => one.chosen !== undefined);
  doubtSharedSamples(paired);
  return {
    entries: paired.map((choice) => entryOf(choice, folder, shown)),
    leftOut,
    folders: new Set(paired.map(({ chosen }) => chosen)),
  };
}

/** Of tables that hold the same under much the same name, the one with the shortest. */
function withoutCopies(
  tables: readonly TableCandidate[],
  leftOut: LeftOut[],
  shown: (path: string) => string,
): TableCandidate[] {
  const kept: { text: string; table: TableCandidate }[] = [];
  for (const table of [...tables].sort((a, b) => a.path.length - b.path.length)) {
    const text = `${folderOf(table.path)}\n${table.text.trim().replace(/\r\n?/g, '\n')}`;
    const first = kept.find(
      (one) =>
        one.text === text && nameLikeness(titleOfTable(one.table.path), titleOfTable(table.path)) >= alike,
    );
    if (first)
      leftOut.push({ path: shown(table.path), because: `It holds the same as ${shown(first.table.path)}.` });
    else kept.push({ text, table });
  }
  return tables.filter((table) => kept.some((one) => one.table === table));
}

/** One folder alone, or the one that lies where the table stands. */
function chooseByPlace(choice: Choice, shown: (path: string) => string): boolean {
  const { table, folders, because } = choice;
  const { names, best } = table.matches;
  const own = folders.filter((one) => isWithin(folderOf(table.path), one));
  const [only] = folders.length === 1 ? folders : own;
  if (only === undefined || (folders.length > 1 && own.length !== 1)) return false;
  choice.chosen = only;
  const found = best[0]?.found ?? 0;
  because.push(
    found === names
      ? `${byCount(names, 'The', 'All')} ${counted(names, 'sample name')} of the table ${byCount(names, 'is', 'are')} in this folder.`
      : `${found} of the ${counted(names, 'sample name')} of the table are in this folder.`,
  );
  if (folders.length > 1)
    because.push(`Others have the same names, but this one is beside the table: ${shown(only)}.`);
  return true;
}

function chooseByName(choice: Choice): boolean {
  const title = titleOfTable(choice.table.path);
  const likeness = choice.folders.map((one) => nameLikeness(title, folderName(one)));
  const most = Math.max(...likeness);
  const fitting = choice.folders.filter((_, at) => likeness[at] === most);
  if (most < alike || fitting.length !== 1) return false;
  [choice.chosen] = fitting;
  choice.because.push(
    `${counted(choice.folders.length, 'folder')} have files of these names; this one is named like the table.`,
  );
  return true;
}

function chooseWhatIsLeft(
  choice: Choice,
  taken: ReadonlySet<string>,
  shown: (path: string) => string,
  leftOut: LeftOut[],
): void {
  const left = choice.folders.filter((one) => !taken.has(one));
  const listed = choice.folders.slice(0, mostNamed).map(shown).join(', ');
  if (left.length === 1) {
    [choice.chosen] = left;
    choice.because.push('Its sample names are in this folder, which no other table uses.');
    choice.doubts.push(
      `Files of these names are in other folders too: ${listed}. Listen to check that it is the right one.`,
    );
    return;
  }
  leftOut.push({
    path: shown(choice.table.path),
    because: `Files of its sample names are in ${counted(choice.folders.length, 'folder')}, and nothing says which is meant: ${listed}.`,
  });
}

/** Of tables that use the same samples all but the best named may be older versions. */
function doubtSharedSamples(paired: readonly (Choice & { chosen: string })[]): void {
  const byFolder = new Map<string, (Choice & { chosen: string })[]>();
  for (const one of paired) byFolder.set(one.chosen, [...(byFolder.get(one.chosen) ?? []), one]);
  for (const sharing of byFolder.values()) {
    for (const one of sharing) {
      const others = sharing.filter((other) => other !== one && haveSameSamples(one.table, other.table));
      const own = standing(one);
      const better = others.find(
        (other) => standing(other) > own || (standing(other) === own && other.table.path < one.table.path),
      );
      if (better)
        one.doubts.push(
          `${nameOf(better.table.path)} uses the same samples: this may be another version of it.`,
        );
    }
  }
}

function standing({ table, chosen }: Choice & { chosen: string }): number {
  return nameLikeness(titleOfTable(table.path), folderName(chosen));
}

function haveSameSamples(one: TableCandidate, other: TableCandidate): boolean {
  const shared = [...one.names].filter((name) => other.names.has(name)).length;
  return shared > Math.min(one.names.size, other.names.size) / 2;
}

function entryOf(
  { table, chosen, because, doubts }: Choice & { chosen: string },
  folder: string,
  shown: (path: string) => string,
): InstrumentEntry {
  const { names, best } = table.matches;
  const missing = names - (best[0]?.found ?? 0);
  const name = nameOfTable(table.path, chosen, folder);
  const all = [...doubts];
  if (missing > 0)
    all.push(`${missing} of its ${counted(names, 'sample')} ${byCount(missing, 'is', 'are')} not there.`);
  if (name.doubt !== undefined) all.push(name.doubt);
  const pairing: Pairing = {
    confidence: confidenceOf(names, missing, all, name.agrees),
    because,
    doubts: all,
  };
  const samples = shown(chosen) === '' ? '.' : shown(chosen);
  return { name: name.name, source: shown(table.path), samples, pairing };
}

/** Our choice: certain where all is there and nothing speaks against it. */
function confidenceOf(names: number, missing: number, doubts: readonly string[], agrees: boolean): number {
  const found = 1 - missing / names;
  const sure = agrees ? 1 : 0.9;
  const share = doubts.length === 0 ? sure : doubts.length === 1 && missing > 0 ? sure * 0.7 * found : 0.5;
  return Math.round(share * 100) / 100;
}
