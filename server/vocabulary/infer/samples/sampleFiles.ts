import { isAudioFileName, isSampleFileName, sampleEndings } from '../../../model/fileNames';
import type { SampleFactsLookup } from '../../../model/notation';
import { joinPath } from '../../../model/paths';
import type { SampleFacts } from '../../../model/samples';
import { languages } from '../../../trade/languages/languages';
import { writeListedFolder } from '../../listedFolder';
import type { ValueForm } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import type { Column } from '../values/column';
import type { Rows } from '../values/rows';
import { conceptsOf } from '../words/tradeWords';
import type { SampleList } from './sampleList';
import { samplePathDrafts } from './samplePathDrafts';

/** The audio files of the rows. */
export interface SampleFiles {
  form: Extract<ValueForm, { kind: 'path' }>;
  /** What the header of a row's file says, where it is known. */
  facts: readonly (SampleFacts | undefined)[];
  /** How a row names its file. */
  names: readonly (string | undefined)[];
  /** The places around regions that name folders of their files. */
  around: readonly Column[];
  drafts: Draft[];
}

const mostLookedUp = 160;
/** Folders that samples are mostly in, where the text names none, and how many files are looked for there (our choice). */
const usualFolders = ['samples', 'Samples', 'audio', 'sounds', 'wav'];
const mostProbed = 4;
/** Words for folders. */
export const folderWords: ReadonlySet<string> = new Set(languages.flatMap(({ folders }) => folders));

/** Finds how paths are written, and the files that they lead to. */
export function findSampleFiles(
  assigned: readonly Assigned[],
  rows: Rows,
  lookup: SampleFactsLookup | undefined,
  given?: SampleFiles['form'],
  list?: SampleList,
  ending?: string,
): SampleFiles {
  const places = assigned.filter(({ target }) => target === 'sample');
  const names = namesOfRows(places, rows, list);
  const step = Math.max(1, Math.floor(rows.count / mostLookedUp));
  const looked = someNames(names, step);
  // The folder that the list itself names is in its paths already.
  const ofList = list?.place.under;
  const isFree = ({ at }: Column) => ofList === undefined || !at.endsWith(ofList);
  const free: Rows = { ...rows, columns: rows.columns.filter(isFree) };
  const named = foldersIn(free, assigned);
  const outer = outerFoldersIn(free, assigned);
  const endings = endingsToTry(looked, given, ending);
  const folders = [...new Set([given?.folder ?? '', '', ...named.map(({ folder }) => folder)])];
  const written = bestPlaced(looked, lookup, { folders, endings, outer });
  const probed =
    written.found === 0 &&
    bestPlaced(looked.slice(0, mostProbed), lookup, {
      folders: usualFolders,
      endings: endings.slice(0, 1),
      outer: [],
    });
  const best = probed && probed.found > 0 ? probed : written;
  const isGuessed = best.found === 0 && !given;
  const hasFolders = looked.some(({ name }) => name.includes('/'));
  const placed: Placed = isGuessed
    ? {
        folder: named[0]?.folder ?? best.folder,
        ending: best.ending,
        under: hasFolders && named.length === 0 ? [] : inwards(outer),
      }
    : best;
  const { folder, under: around } = withStatedFolder(placed, named);
  const form: SampleFiles['form'] = {
    kind: 'path',
    ...(folder !== '' && { folder }),
    ...(around.length > 0 && { under: around.map(placeOf).join(' | ') }),
    ...(placed.ending !== '' && { ending: placed.ending }),
    ...(names.some((name) => name?.includes('\\')) && { separator: '\\' as const }),
    ...(list && { list: list.place }),
  };
  const facts = factsOfRows(names, step, best.found > 0 ? lookup : undefined, placed);
  const place = places.at(-1);
  const drafts = place
    ? samplePathDrafts(
        place,
        form,
        { found: best.found, looked: best === probed ? Math.min(mostProbed, looked.length) : looked.length },
        endings,
      )
    : [];
  return { form, facts, names, around, drafts };
}

/** What the headers of the files say that some rows name, every so many rows. */
function factsOfRows(
  names: readonly (string | undefined)[],
  step: number,
  lookup: SampleFactsLookup | undefined,
  placed: Placed,
): (SampleFacts | undefined)[] {
  const facts: (SampleFacts | undefined)[] = new Array(names.length).fill(undefined);
  if (!lookup) return facts;
  for (let row = 0; row < names.length; row += step) {
    const name = names[row];
    if (name) facts[row] = lookup(pathOf(placed, row, name.replaceAll('\\', '/')));
  }
  return facts;
}

/** How each row names its file; the innermost place that holds something counts. */
function namesOfRows(
  places: readonly Assigned[],
  rows: Rows,
  list: SampleList | undefined,
): (string | undefined)[] {
  const names: (string | undefined)[] = new Array(rows.count).fill(undefined);
  for (const { texts, column } of [...places].sort((one, other) => other.column.level - one.column.level)) {
    for (let row = 0; row < rows.count; row++)
      if (column.cells[row]) names[row] ??= list ? list.paths.get(texts[row]?.trim() ?? '') : texts[row];
  }
  return names;
}

interface NameOfRow {
  row: number;
  /** With `/`. */
  name: string;
}

/** Every so many a name, so that no more than some are looked up. */
function someNames(names: readonly (string | undefined)[], step: number): NameOfRow[] {
  const some: NameOfRow[] = [];
  for (let row = 0; row < names.length && some.length < mostLookedUp; row += step) {
    const name = names[row];
    if (name) some.push({ row, name: name.replaceAll('\\', '/') });
  }
  return some;
}

function endingsToTry(
  looked: readonly NameOfRow[],
  given: SampleFiles['form'] | undefined,
  stated: string | undefined,
): string[] {
  if (looked.filter(({ name }) => isAudioFileName(name)).length * 2 >= looked.length) return [''];
  const usual = sampleEndings.map((ending) => `.${ending}`);
  return [...new Set([...(given?.ending ? [given.ending] : []), ...(stated ? [stated] : []), ...usual])];
}

/** Where most of some names are files, the first choice where none is. */
function bestPlaced(
  looked: readonly NameOfRow[],
  lookup: SampleFactsLookup | undefined,
  {
    folders,
    endings,
    outer,
  }: { folders: readonly string[]; endings: readonly string[]; outer: readonly Column[] },
): Placed & { found: number } {
  const first: Placed = { folder: folders[0], ending: endings[0], under: [] };
  let best = { ...first, found: 0 };
  if (!lookup) return best;
  for (const under of [[], ...outer.map((one) => [one]), ...(outer.length > 1 ? [inwards(outer)] : [])]) {
    for (const folder of folders) {
      for (const ending of endings) {
        const placed = { folder, ending, under };
        const found = looked.filter(({ row, name }) => lookup(pathOf(placed, row, name))).length;
        if (found > best.found) best = { ...placed, found };
      }
    }
  }
  return best;
}

/** Where files are: what is put before and behind their names. */
interface Placed {
  folder: string;
  ending: string;
  /** Places around the regions that name further folders, from the outermost inwards. */
  under: readonly Column[];
}

function pathOf({ folder, ending, under }: Placed, row: number, name: string): string {
  const ended = ending === '' || isSampleFileName(name) ? name : name + ending;
  const path = under.reduceRight((inner, { cells }) => {
    const outer = cells[row]?.text.trim().replaceAll('\\', '/') ?? '';
    return outer === '' ? inner : joinPath(outer, inner);
  }, ended);
  return folder === '' ? path : joinPath(folder, path);
}

/** Places of outer elements that are named like a folder and hold another one from element to element. */
function outerFoldersIn(rows: Rows, assigned: readonly Assigned[]): Column[] {
  const used = new Set(assigned.map(({ column }) => column));
  const sample = assigned.find(({ target }) => target === 'sample')?.column;
  const region = Math.max(0, ...rows.columns.map(({ level }) => level));
  return rows.columns
    .filter((column) => {
      if (used.has(column) || !isNamedFolder(column)) return false;
      if (column.level >= region && !column.listed && !standsBefore(column, sample)) return false;
      const texts = new Set(column.cells.flatMap((cell) => (cell ? [cell.text] : [])));
      const isEverywhere = column.cells.every((cell) => cell !== undefined);
      const isNamed = texts.size > 1 || (texts.size === 1 && (!isEverywhere || column.listed !== undefined));
      return isNamed && [...texts].every(looksLikeFolder);
    })
    .sort((one, other) => other.level - one.level)
    .slice(0, 3);
}

/** Whether a place stands before another one in all rows. */
function standsBefore({ cells }: Column, other: Column | undefined): boolean {
  return (
    other !== undefined && cells.every((cell, row) => !cell || cell.start < (other.cells[row]?.start ?? -1))
  );
}

/** The place of a folder in the form of a path. */
function placeOf({ at, listed }: Column): string {
  return listed ? writeListedFolder({ by: at, listed }) : at;
}

/** One place of each level, from the outermost inwards. */
function inwards(columns: readonly Column[]): Column[] {
  const ofLevels = new Map<number, Column>();
  for (const column of columns) if (!ofLevels.has(column.level)) ofLevels.set(column.level, column);
  return [...ofLevels.values()].sort((one, other) => one.level - other.level);
}

/** Whether a place is named like a folder, or holds paths that end like one. */
function isNamedFolder({ own, around, cells }: Column): boolean {
  const words = [...own, ...(around.at(-1) ?? [])];
  if (words.some((word) => folderWords.has(word))) return true;
  // A path of an outer element leads to where the files of its regions are.
  if (own.length > 0 && own.every((word) => conceptsOf(word)?.concepts.includes('path'))) return true;
  return cells.some((cell) => cell) && cells.every((cell) => !cell || /[^\s/\\:][/\\]\s*$/.test(cell.text));
}

/** Whether a text can be the path of a folder. */
export function looksLikeFolder(text: string): boolean {
  return !isAudioFileName(text) && /[\p{L}./]/u.test(text) && text.length <= 300;
}

/** A folder and the place that names it. */
interface StatedFolder {
  folder: string;
  column: Column;
}

/** A folder that an outer element names as the place where it does, so that another text may name another one there. */
function withStatedFolder(placed: Placed, named: readonly StatedFolder[]): Placed {
  const stated = named.find(({ folder }) => folder === placed.folder)?.column;
  const isOther = stated && placed.under.every(({ at }) => at !== stated.at);
  if (!isOther || stated.listed !== undefined || placed.folder === '') return placed;
  return { ...placed, folder: '', under: [stated, ...placed.under] };
}

/** Values of outer elements, the same for all regions, that are named like a folder. */
function foldersIn(rows: Rows, assigned: readonly Assigned[]): StatedFolder[] {
  const used = new Set(assigned.map(({ column }) => column));
  const folders: StatedFolder[] = [];
  const region = Math.max(0, ...rows.columns.map(({ level }) => level));
  for (const column of rows.columns) {
    if (used.has(column) || column.level >= region) continue;
    if (!isNamedFolder(column)) continue;
    const texts = new Set(column.cells.map((cell) => cell?.text));
    const [text] = texts;
    if (texts.size !== 1 || !text || !looksLikeFolder(text)) continue;
    folders.push({ folder: text.replaceAll('\\', '/').replace(/\/+$/, ''), column });
  }
  return folders.slice(0, 4);
}
