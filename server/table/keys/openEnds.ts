import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';
import type { ValueColumn } from '../zones/zoneList';
import { alikeZones } from './completeKeys';

/** The end of a key range, and which way it is to be closed. */
interface End {
  column: ColumnReading;
  values: ValueColumn;
  /** The end that the row does give. */
  given: ValueColumn;
  /** Zones that this end is towards: 1 above, −1 below. */
  step: 1 | -1;
}

/**
 * Closes the key ranges of rows that leave one end empty where others give it, with a note each: with the end of a zone that has the
 * same other end, or as the text says, else right before the next zone. What has no next zone stays open, which is noted too.
 */
export function closeOpenEnds(table: ZoneCells): void {
  const [low, high] = [table.column('lokey'), table.column('hikey')];
  if (!low || !high || table.column('key') || table.column('key_count')) return;
  const [lows, highs] = [table.zones.values('lokey'), table.zones.values('hikey')];
  if (!lows || !highs) return;
  closeEnds(table, { column: high, values: highs, given: lows, step: 1 });
  closeEnds(table, { column: low, values: lows, given: highs, step: -1 });
}

function closeEnds(table: ZoneCells, end: End): void {
  const { zones, first } = table;
  const { values, given, column, step } = end;
  const isOpen = (zone: number) =>
    given.cells[zone] >= 0 && values.cells[zone] < 0 && table.cellOf(zones.rows[zone], column) < 0;
  let open = 0;
  for (let zone = first; zone < table.end; zone++) if (isOpen(zone)) open++;
  if (open === 0) return;
  const said = table.options.statements.blankEnd;
  if (said && said.of === column.meaning) {
    for (let zone = first; zone < table.end; zone++) {
      if (!isOpen(zone)) continue;
      values.set(zone, given.cells[zone], given.numbers[zone]);
      tell(table, end, zone, given.numbers[zone], said.text);
    }
    return;
  }
  for (const alike of alikeZones(zones, first, given)) {
    const waiting = alike.filter(isOpen);
    if (waiting.length === 0) continue;
    const starts = [...new Set(alike.map((zone) => given.numbers[zone]))].sort((a, b) => (a - b) * step);
    const known = new Map<number, number>();
    for (const zone of alike)
      if (values.cells[zone] >= 0) known.set(given.numbers[zone], values.numbers[zone]);
    const closed = waiting.map((zone) => ({ zone, key: closing(given.numbers[zone], starts, known, step) }));
    for (const { zone, key } of closed) {
      if (key !== undefined) values.set(zone, given.cells[zone], key);
      tell(table, end, zone, key);
    }
  }
}

/** The key that closes a range; `undefined` where no zone follows. */
function closing(
  start: number,
  starts: readonly number[],
  known: ReadonlyMap<number, number>,
  step: 1 | -1,
): number | undefined {
  const next = starts[starts.indexOf(start) + 1];
  return known.get(start) ?? (next === undefined ? undefined : next - step);
}

function tell(
  { zones, cells, notes }: ZoneCells,
  { column, given, step }: End,
  zone: number,
  key?: number,
  said?: string,
): void {
  const cell = given.cells[zone];
  const span = { start: cells.starts[cell], end: cells.ends[cell] };
  const place = `${notes.place(span.start)}, ${columnName(column)}`;
  const what =
    key === undefined
      ? `is empty and no zone lies ${step > 0 ? 'above' : 'below'}, so the zone reaches ${step > 0 ? 'up to key 127' : 'down to key 0'}`
      : `is empty; key ${key} is taken, ${said === undefined ? 'where the zones around it end or begin' : `as "${shortened(said)}" says`}`;
  notes.row = zones.rows[zone];
  notes.add(
    'assumed',
    span,
    `${place}: the cell ${what}. Fill the cell in if that is wrong.`,
    `open ${step}`,
  );
}
