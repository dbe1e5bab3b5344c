import { folderOf, isAbsolutePath, nameOf } from '../../model/paths';
import type { Steps } from '../../model/steps';
import { piecesInStep } from '../../model/steps';
import { counted } from '../../model/wording/counted';
import { decodedName } from '../../trade/names/decodedName';
import type { Statements } from '../../trade/statements/statements';
import { shortened } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import type { ZoneList } from './zoneList';
import type { NameReader } from './zoneNames';

/** Blanks and brackets as addresses of the web write them; so many names have to have them where no file tells (our choice). */
const encoded = /%(?:20|28|29|5b|5d)/i;
const fewestEncoded = 2;

/**
 * Puts the files that samples were found to be in their place; of the others, names written as in an address of the web as they read, paths
 * of another computer into the folder of the other samples where it is the same, and the folder that the text names before the rest.
 */
export function* placeSamples(
  zones: ZoneList,
  first: number,
  resolveSample: ((sample: string) => string | undefined) | undefined,
  names: NameReader,
  folder: Statements['folder'],
  notes: TableNotes,
): Steps<void> {
  const open: number[] = [];
  let placed = -1;
  let decoded = -1;
  for (let zone = first; zone < zones.count; zone++) {
    const sample = zones.sample(zone);
    const path = resolveSample?.(sample);
    if (path !== undefined) {
      if (sample.includes('%') && nameOf(path) === nameOf(decodedName(sample) ?? '')) decoded = zone;
      zones.setSample(zone, path);
    } else {
      open.push(zone);
      names.noteEnding(zones, zone);
      if (folder && putInto(zones, zone, folder.path)) placed = zone;
    }
    if (zone % piecesInStep === 0) yield zone / zones.count;
  }
  const found = decodeNames(zones, open);
  noteDecoded(zones, found < 0 ? decoded : found, notes);
  placeAbsolute(zones, first, open, notes);
  if (folder && placed >= 0)
    notes.add(
      'assumed',
      spanOf(zones, placed),
      `The folder ${folder.path} is put before the samples, as "${shortened(folder.text)}" names it.`,
    );
}

/** Whether a folder could be put before a sample that has none. */
function putInto(zones: ZoneList, zone: number, folder: string): boolean {
  const sample = zones.sample(zone);
  if (/[/\\*]/.test(sample)) return false;
  zones.setSample(zone, `${folder}${sample}`);
  return true;
}

/** Writes names of no file as they read where several are written as in an address; answers one of them, −1 where there is none. */
function decodeNames(zones: ZoneList, open: readonly number[]): number {
  const names = new Set(open.map((zone) => zones.sample(zone)).filter((name) => encoded.test(name)));
  if (names.size < fewestEncoded) return -1;
  let last = -1;
  for (const zone of open) {
    const name = decodedName(zones.sample(zone));
    if (name === undefined) continue;
    zones.setSample(zone, name);
    last = zone;
  }
  return last;
}

function noteDecoded(zones: ZoneList, zone: number, notes: TableNotes): void {
  if (zone < 0) return;
  const given = shortened(zones.cells.value(zones.column('sample').cells[zone]));
  const message = `Signs such as %20 in sample names are read as in addresses of the web: "${given}" is "${shortened(zones.sample(zone))}".`;
  notes.add('assumed', spanOf(zones, zone), message);
}

/** Writes absolute paths of no file as the others are where they end with the same folder, and notes the rest. */
function placeAbsolute(zones: ZoneList, first: number, open: readonly number[], notes: TableNotes): void {
  const absolute = open.filter((zone) => isAbsolutePath(withSlashes(zones.sample(zone))));
  if (absolute.length === 0) return;
  const folders = foldersOf(zones, first);
  const left: number[] = [];
  for (const zone of absolute) {
    const path = withSlashes(zones.sample(zone));
    const end = folderAtEnd(folderOf(path), folders);
    if (end === undefined) {
      left.push(zone);
      continue;
    }
    const sample = `${end}/${nameOf(path)}`;
    const span = spanOf(zones, zone);
    const message = `${notes.place(span.start)}: "${shortened(zones.sample(zone))}" is a path of another computer; "${shortened(sample)}" is written, as the other samples are in that folder.`;
    notes.row = zones.rows[zone];
    notes.add('assumed', span, message, 'absolute');
    zones.setSample(zone, sample);
  }
  const [one] = left;
  if (one === undefined) return;
  const more = left.length > 1 ? ` The same holds for ${counted(left.length - 1, 'more place')}.` : '';
  const message = `"${shortened(zones.sample(one))}" is a path of another computer.${more} Put the file beside the text, or correct the path.`;
  notes.row = zones.rows[one];
  notes.add('assumed', spanOf(zones, one), message);
}

/** The folders of relative paths with `/`, by their names in small letters. */
function foldersOf(zones: ZoneList, first: number): Map<string, string> {
  const folders = new Map<string, string>();
  for (let zone = first; zone < zones.count; zone++) {
    const path = withSlashes(zones.sample(zone));
    const folder = isAbsolutePath(path) ? '' : folderOf(path).replace(/^\.\//, '');
    if (folder !== '' && !folder.startsWith('..')) folders.set(folder.toLowerCase(), folder);
  }
  return folders;
}

/** The longest of some folders that a path of a folder ends with. */
function folderAtEnd(path: string, folders: ReadonlyMap<string, string>): string | undefined {
  const parts = path.toLowerCase().split('/');
  for (let at = 1; at < parts.length; at++) {
    const folder = folders.get(parts.slice(at).join('/'));
    if (folder !== undefined) return folder;
  }
  return undefined;
}

function withSlashes(path: string): string {
  return path.replaceAll('\\', '/');
}

function spanOf(zones: ZoneList, zone: number): { start: number; end: number } {
  const cell = zones.column('sample').cells[zone];
  return { start: zones.cells.starts[cell], end: zones.cells.ends[cell] };
}
