import { dynamicIn } from '../../trade/dynamics';
import { wordsOf } from '../../trade/languages/spelling';
import type { ColumnMeaning } from '../../trade/meaning';
import { triggerOf } from '../../trade/triggers';
import type { ColumnReading } from '../columns/columnReading';
import { shortened } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import type { ZoneList } from './zoneList';
import { valueWords } from './zoneList';

/** A name that says more is no name of a kind of zones. */
const mostWords = 4;
const velocities: readonly ColumnMeaning[] = ['lovel', 'hivel', 'velocity_range', 'dynamics'];

/**
 * Reads what the names of groups say of their zones: that they sound when the key is let go, and how loud they are played, where
 * no column says so. Answers whether dynamics were found. The zones of the table are those from number `first` on.
 */
export function readGroupNames(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
): boolean {
  const used = new Set<number>();
  for (let zone = first; zone < zones.count; zone++) used.add(zones.groups[zone]);
  const names = [...used]
    .filter((group) => group > 0)
    .map((group) => [group, zones.groupNames[group]] as const);
  if (names.length === 0) return false;
  const has = (meaning: ColumnMeaning) =>
    columns.some((column) => column.meaning === meaning || column.side?.kind === meaning);
  if (!has('trigger')) {
    for (const [group, name] of names) if (isRelease(name)) setRelease(zones, first, group, notes);
  }
  if (velocities.some(has)) return false;
  const dynamics = new Map(names.map(([group, name]) => [group, dynamicOfName(name)]));
  const found = new Set([...dynamics.values()].filter((one) => one >= 0));
  if (found.size < 2 || used.has(0) || [...dynamics.values()].some((one) => one < 0)) return false;
  for (let zone = first; zone < zones.count; zone++)
    zones.setDynamic(zone, zones.groupCells[zone], dynamics.get(zones.groups[zone]) ?? 0);
  return true;
}

/** Whether a name such as `Release samples` or `Note-off noises` speaks of letting the key go. */
function isRelease(name: string): boolean {
  const words = wordsOf(name);
  if (words.length > mostWords) return false;
  return words.some(
    (word, at) => triggerOf(word) === 'release' || triggerOf(words.slice(at, at + 2).join(' ')) === 'release',
  );
}

function dynamicOfName(name: string): number {
  const words = wordsOf(name);
  const whole = dynamicIn(words.join(' '));
  if (whole >= 0 || words.length > mostWords) return whole;
  const found = words.map(dynamicIn).filter((one) => one >= 0);
  return found.length === 1 ? found[0] : -1;
}

function setRelease(zones: ZoneList, first: number, group: number, notes: TableNotes): void {
  const { cells, groups, groupCells } = zones;
  const triggers = zones.column('trigger');
  let cell = -1;
  for (let zone = first; zone < zones.count; zone++) {
    if (groups[zone] !== group) continue;
    cell = groupCells[zone];
    triggers.set(zone, cell, valueWords.indexOf('release'));
  }
  if (cell < 0) return;
  const span = { start: cells.starts[cell], end: cells.ends[cell] };
  const name = shortened(zones.groupNames[group]);
  notes.row = -1;
  notes.add('assumed', span, `The zones of "${name}" are taken to sound when the key is released.`);
}
