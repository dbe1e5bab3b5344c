import type { Steps } from '../../model/steps';
import { piecesInStep } from '../../model/steps';
import type { TableRows } from '../cells/tableRows';
import type { ColumnReading } from '../columns/columnReading';
import { shortened } from '../columns/columnReading';
import type { TableNotes } from '../tableNotes';
import type { ZoneList } from './zoneList';

/** Of zones with the same sample and keys, so many are looked at. */
const mostLooks = 20;

/**
 * Takes out zones whose rows repeat another one of the table to the letter, with a note each: a row that was copied twice, which would
 * sound twice as loud. A row of another section, one with a remark of its own and one below a line of words stay, and so do all rows
 * where the zones take turns. The zones of the table are those from number `first` on.
 */
export function* leaveOutRepeated(
  zones: ZoneList,
  first: number,
  { others, data }: TableRows,
  columns: readonly ColumnReading[],
  takeTurns: boolean,
  notes: TableNotes,
): Steps<void> {
  const seen = new Map<string, number[]>();
  const repeated = new Map<number, number>();
  const names = ['key', 'lokey', 'hikey', 'pitch_keycenter'] as const;
  for (let zone = first; zone < zones.count; zone++) {
    if ((zone - first) % piecesInStep === 0) yield (zone - first) / (zones.count - first);
    const keys = names.map((name) => zones.values(name)?.oneMore(zone) ?? 0);
    if (keys.every((key) => key === 0)) continue;
    const name = `${keys.join()} ${zones.sample(zone)}`;
    const alike = seen.get(name);
    if (!alike) {
      seen.set(name, [zone]);
      continue;
    }
    const same = alike.find((one) => isSame(zones, one, zone) && readsSame(zones, one, zone, columns));
    if (same !== undefined) repeated.set(zone, same);
    else if (alike.length < mostLooks) alike.push(zone);
  }
  if (repeated.size === 0) return;
  const lines = others.filter(({ row, why }) => row > (data[0] ?? 0) && why === 'is a line of text');
  const left = new Set<number>();
  for (const [zone, same] of repeated) {
    const [row, other] = [zones.rows[zone], zones.rows[same]];
    const isBelowLine = lines.some((line) => line.row > other && line.row < row);
    const span = zones.rowSpan(zone);
    const where = `${notes.place(span.start)} repeats ${notes.place(zones.rowSpan(same).start).toLowerCase()} ("${shortened(zones.sample(zone))}") to the letter`;
    notes.row = row;
    if (takeTurns || isBelowLine)
      notes.add('assumed', span, `${where}; both are kept. Take one out if it was copied twice.`, 'repeated');
    else {
      left.add(zone);
      notes.add('assumed', span, `${where}, so its zone is made once.`, 'repeated');
    }
  }
  notes.row = -1;
  zones.remove(left, first);
}

/** Whether two zones of different rows agree in all values. */
function isSame(zones: ZoneList, zone: number, other: number): boolean {
  return (
    zones.rows[zone] !== zones.rows[other] &&
    zones.groups[zone] === zones.groups[other] &&
    zones.valueLists().every((values) => values.oneMore(zone) === values.oneMore(other))
  );
}

/** Whether the rows of two zones read the same, but for their own numbers. */
function readsSame(
  { cells, rows }: ZoneList,
  zone: number,
  other: number,
  columns: readonly ColumnReading[],
): boolean {
  return columns.every(
    ({ meaning, index }) =>
      meaning === 'row_number' ||
      cells.value(cells.cell(rows[zone], index)) === cells.value(cells.cell(rows[other], index)),
  );
}
