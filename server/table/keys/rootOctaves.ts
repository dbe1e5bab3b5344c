import { counted } from '../../model/wording/counted';
import { notesInFileName, readKey } from '../../trade/readings/keyReading';
import type { TableNotes } from '../tableNotes';
import type { ValueColumn, ZoneList } from '../zones/zoneList';
import { keysOfZones } from './keysOfZones';

/** So many rows have to be there (our choice). */
const fewest = 4;
/** So many roots may lie elsewhere (our choice). */
const mostOthers = 1 / 4;
const octave = 12;
const mostListed = 8;

interface Moved {
  zone: number;
  by: number;
}

/**
 * Reads note names of roots an octave up or down where only so they lie within their keys, which are numbers: tables put together of
 * several count octaves in two ways. Half of them or more have to lie within theirs as they stand. Names of samples that give a note keep it. The zones of the table are those from number `first` on.
 */
export function settleRootOctaves(zones: ZoneList, first: number, notes: TableNotes): void {
  const roots = zones.values('pitch_keycenter');
  if (!roots) return;
  const moved = movedRoots(zones, roots, first);
  const [one] = moved;
  if (!one) return;
  const spanOf = (zone: number) => {
    const cell = roots.cells[zone];
    return { start: zones.cells.starts[cell], end: zones.cells.ends[cell] };
  };
  const listed = moved.slice(0, mostListed).map(({ zone, by }) => {
    const name = zones.cells.plain(roots.cells[zone]);
    return `${notes.place(spanOf(zone).start).toLowerCase()} (${name} as ${roots.numbers[zone] + by})`;
  });
  for (const { zone, by } of moved) roots.numbers[zone] += by;
  const more =
    moved.length > listed.length ? `, and ${counted(moved.length - listed.length, 'more row')}` : '';
  notes.add(
    'assumed',
    spanOf(one.zone),
    `The names of root keys count octaves in two ways. Only an octave apart from the others these lie within the keys of their rows, and are read so: ${listed.join(', ')}${more}. Check them.`,
  );
}

function movedRoots(zones: ZoneList, roots: ValueColumn, first: number): Moved[] {
  const { cells } = zones;
  const keysOf = keysOfZones(zones);
  const isNumber = (cell: number) => cell >= 0 && /^\W*\d/.test(cells.plain(cell));
  const ends = (['lokey', 'hikey', 'key'] as const).flatMap((name) => zones.values(name) ?? []);
  const moved: Moved[] = [];
  /** The keys of rows whose roots lie within. */
  const within = new Set<string>();
  let [count, others] = [0, 0];
  for (let zone = first; zone < zones.count; zone++) {
    const [cell, keys] = [roots.cells[zone], keysOf(zone)];
    if (cell < 0) continue;
    const areNumbers = ends.every((end) => end.cells[zone] < 0 || isNumber(end.cells[zone]));
    if (!keys || !areNumbers || readKey(cells.plain(cell))?.named === undefined) continue;
    const root = roots.numbers[zone];
    count++;
    const fits = (number: number) => number >= keys.low && number <= keys.high;
    const by = fits(root) ? 0 : [octave, -octave].find((step) => fits(root + step));
    if (by === undefined) others++;
    else if (by === 0) within.add(`${keys.low} ${keys.high}`);
    else moved.push({ zone, by });
  }
  if (count < fewest || moved.length * 2 > count || others > count * mostOthers) return [];
  // A layer an octave off stands on the keys of others.
  const isMeant = ({ zone }: Moved) => {
    const keys = keysOf(zone);
    return within.has(`${keys?.low} ${keys?.high}`) || notesInFileName(zones.sample(zone)).length > 0;
  };
  return moved.some(isMeant) ? [] : moved;
}
