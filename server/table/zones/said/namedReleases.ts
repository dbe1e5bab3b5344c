import { bareWord } from '../../../trade/languages/spelling';
import type { NamedReleases } from '../../../trade/statements/playing/namedReleases';
import type { ColumnReading } from '../../columns/columnReading';
import { shortened } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ZoneList } from '../zoneList';
import { valueWords } from '../zoneList';

/**
 * Lets zones sound when the key is let go whose names have what the text explains so, where no column says what starts them. The zones of
 * the table are those from number `first` on.
 */
export function giveNamedReleases(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  statements: readonly NamedReleases[],
  notes: TableNotes,
): void {
  const isGiven = columns.some(({ meaning, side }) => meaning === 'trigger' || side?.kind === 'trigger');
  if (statements.length === 0 || isGiven) return;
  for (const { marks, areFolders, text } of statements) {
    const meant: number[] = [];
    for (let zone = first; zone < zones.count; zone++) {
      const parts = areFolders ? foldersOf(zones.sample(zone)) : partsOf(zones.sample(zone));
      if (marks.some((mark) => parts.includes(mark))) meant.push(zone);
    }
    // What all names have tells none apart.
    if (meant.length === 0 || meant.length === zones.count - first) continue;
    const triggers = zones.column('trigger');
    const samples = zones.column('sample').cells;
    for (const zone of meant) triggers.set(zone, samples[zone], valueWords.indexOf('release'));
    const cell = samples[meant[0]];
    notes.row = -2;
    notes.add(
      'assumed',
      { start: zones.cells.starts[cell], end: zones.cells.ends[cell] },
      `"${shortened(text)}": ${meant.length} ${meant.length === 1 ? 'zone sounds' : 'zones sound'} when the key is let go, by ${areFolders ? (meant.length === 1 ? 'its folder' : 'their folders') : meant.length === 1 ? 'its name' : 'their names'}.`,
    );
  }
}

/** The folders of a name. */
function foldersOf(name: string): string[] {
  return name.split(/[/\\]/).slice(0, -1).map(bareWord);
}

/** The words and letters of a name, without its folder and its ending. */
function partsOf(name: string): string[] {
  const stem = name.replace(/^.*[/\\]/, '').replace(/\.\w{1,5}$/, '');
  return [
    ...(bareWord(stem).match(/\p{L}+/gu) ?? []),
    ...(bareWord(stem).match(/[\p{L}\d]+/gu) ?? []),
  ] as string[];
}
