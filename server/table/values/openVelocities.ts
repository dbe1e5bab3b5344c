import { columnName } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

const ends = ['lovel', 'hivel'] as const;
type End = (typeof ends)[number];
const loudest = 127;

/**
 * Closes velocities of which a row gives one end and leaves the cell of the other one blank, as in merged cells: by layers that have the
 * given end too, else by the next layer of the same keys. Each is told. What no layer closes stays open, told where others follow.
 */
export function closeVelocities(table: ZoneCells): void {
  for (const end of ends) closeEnds(table, end, end === 'hivel' ? 'lovel' : 'hivel');
}

function closeEnds(table: ZoneCells, open: End, given: End): void {
  const { zones, first } = table;
  const column = table.column(open);
  if (!column || !table.column(given)) return;
  const [wanted, known] = [zones.column(open), zones.column(given)];
  const has = (zone: number) => known.cells[zone] >= 0 && wanted.cells[zone] >= 0;
  const isOpen = (zone: number) =>
    known.cells[zone] >= 0 && wanted.cells[zone] < 0 && table.cellOf(zones.rows[zone], column) < 0;
  const waiting: number[] = [];
  const pairs = new Map<number, Set<number>>();
  for (let zone = first; zone < table.end; zone++) {
    if (isOpen(zone)) waiting.push(zone);
    if (!has(zone)) continue;
    const others = pairs.get(known.numbers[zone]) ?? new Set();
    pairs.set(known.numbers[zone], others.add(wanted.numbers[zone]));
  }
  if (waiting.length === 0) return;
  const step = open === 'hivel' ? 1 : -1;
  const layers = layersByKeys(table, given);
  const closed = waiting.map((zone) => {
    const own = known.numbers[zone];
    const [only, ...more] = pairs.get(own) ?? [];
    const next = nearest(layers.get(keysOf(table, zone)) ?? [], own, step);
    return { zone, velocity: more.length === 0 && only !== undefined ? only : next && next - step };
  });
  const farthest = Math.max(...[...pairs.keys()].map((one) => one * step));
  for (const { zone, velocity } of closed) {
    const own = known.numbers[zone];
    if (velocity !== undefined && velocity * step >= own * step)
      wanted.set(zone, known.cells[zone], velocity);
    else if (farthest <= own * step) continue;
    if (velocity === loudest) continue;
    const { cells, notes } = table;
    const span = { start: cells.starts[known.cells[zone]], end: cells.ends[known.cells[zone]] };
    const what =
      velocity === undefined
        ? 'is empty, and no layer of the same keys follows, so the zone reaches to the end of the velocities'
        : `is empty; velocity ${velocity} is taken, as in layers like it or next to the layer that follows`;
    const place = `${notes.place(span.start)}, ${columnName(column)}`;
    notes.row = zones.rows[zone];
    notes.add(
      'assumed',
      span,
      `${place}: the cell ${what}. Fill the cell in if that is wrong.`,
      `open ${open}`,
    );
  }
}

/** The given ends of all layers, by the keys that they are on. */
function layersByKeys(table: ZoneCells, given: End): Map<string, number[]> {
  const known = table.zones.column(given);
  const layers = new Map<string, number[]>();
  for (let zone = table.first; zone < table.end; zone++) {
    if (known.cells[zone] < 0) continue;
    const keys = keysOf(table, zone);
    const own = layers.get(keys);
    if (own) own.push(known.numbers[zone]);
    else layers.set(keys, [known.numbers[zone]]);
  }
  return layers;
}

function keysOf({ zones }: ZoneCells, zone: number): string {
  return (['key', 'lokey', 'hikey'] as const).map((name) => zones.values(name)?.oneMore(zone) ?? 0).join(' ');
}

/** The nearest number above another one, or below it with a step of −1. */
function nearest(numbers: readonly number[], own: number, step: 1 | -1): number | undefined {
  const beyond = numbers.filter((one) => one * step > own * step);
  return beyond.length === 0 ? undefined : step * Math.min(...beyond.map((one) => one * step));
}
