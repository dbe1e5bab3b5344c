import { counted } from '../../../model/wording/counted';
import { decimal } from '../../../trade/decimal';
import type { ColumnReading } from '../../columns/columnReading';
import { shortened } from '../../columns/columnReading';
import { rootsInNames } from '../../keys/rootsInNames';
import type { TableNotes } from '../../tableNotes';
import type { ZoneList } from '../zoneList';
import { firstAlike } from './firstAlike';

/** So many zones tell whether some sound together. */
const mostLooks = 2000;
const conditions = [
  'key',
  'lokey',
  'hikey',
  'lovel',
  'hivel',
  'seq_position',
  'trigger',
  'pan',
  'sw_last',
  'lorand',
  'hirand',
] as const;
/** What a sample has once, and how a note names it. */
const ownValues = [
  ['pitch_keycenter', 'root keys'],
  ['transpose', 'transpositions'],
  ['tune', 'tunings'],
  ['volume', 'levels'],
  ['loop_start', 'loop starts'],
  ['loop_end', 'loop ends'],
] as const;

/**
 * Notes where zones of one group answer the same keys and velocities in every way: those with different samples may be meant as round
 * robins, those with the same sample contradict each other. All are kept. Zones from number `first` on are looked at.
 */
export function noteSameConditions(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
): void {
  if (columns.some(({ side }) => side !== undefined)) return;
  const end = Math.min(zones.count, first + mostLooks);
  const [key, low, high] = conditions.map((name) => zones.values(name));
  const alikeFirst = firstAlike(zones, conditions, first, end);
  const withSample = new Map<string, number>();
  const together: (readonly [number, number])[] = [];
  const named = rootsInNames(zones, first, sameNames(zones, first, end));
  for (let zone = first; zone < end; zone++) {
    const before = first + alikeFirst[zone - first];
    const isEverywhere = !(key?.oneMore(zone) || low?.oneMore(zone) || high?.oneMore(zone));
    if (isEverywhere) continue;
    const sample = `${before} ${zones.sample(zone)}`;
    const twin = withSample.get(sample);
    if (twin !== undefined) noteContradiction(zones, twin, zone, named, notes);
    else {
      withSample.set(sample, zone);
      if (before !== zone) together.push([before, zone]);
    }
  }
  noteTogether(zones, together, notes);
}

/** Zones whose sample another one has too, so that its root does not tell how names and roots agree. */
function sameNames(zones: ZoneList, first: number, end: number): ReadonlySet<number> {
  const seen = new Map<string, number>();
  const same = new Set<number>();
  for (let zone = first; zone < end; zone++) {
    const other = seen.get(zones.sample(zone));
    if (other === undefined) seen.set(zones.sample(zone), zone);
    else same.add(zone).add(other);
  }
  return same;
}

/** Notes what two zones with the same sample, on the same keys and velocities, give differently. */
function noteContradiction(
  zones: ZoneList,
  one: number,
  other: number,
  named: (name: string) => number | undefined,
  notes: TableNotes,
): void {
  const differing = ownValues.filter(
    ([name]) => zones.values(name)?.oneMore(one) !== zones.values(name)?.oneMore(other),
  );
  const [first] = differing;
  if (!first) return;
  const written = (zone: number) => {
    const values = zones.values(first[0]);
    return values && values.cells[zone] >= 0 ? decimal(values.numbers[zone] ?? 0) : 'none';
  };
  const places = [one, other].map((zone) => notes.place(zones.rowSpan(zone).start));
  const span = zones.rowSpan(other);
  const root = first[0] === 'pitch_keycenter' ? named(zones.sample(one)) : undefined;
  const name = root === undefined ? '' : ` The name says ${root}.`;
  notes.row = zones.rows[other] ?? -1;
  notes.add(
    'assumed',
    span,
    `${places[0]} and ${places[1]?.toLowerCase()} give "${shortened(zones.sample(one))}" the same keys and velocities, but the ${first[1]} ${written(one)} and ${written(other)}: both sound at once.${name} Take the wrong row out.`,
    'contradicting twin',
  );
  notes.row = -1;
}

function noteTogether(
  { cells, rows }: ZoneList,
  pairs: readonly (readonly [number, number])[],
  notes: TableNotes,
): void {
  const [example] = pairs;
  if (!example) return;
  const [one, other] = example.map((zone) => cells.rowSpan(rows[zone]));
  const more =
    pairs.length > 1
      ? ` ${counted(pairs.length - 1, 'more row repeats', 'more rows repeat')} those of another.`
      : '';
  notes.row = -1;
  notes.add(
    'assumed',
    other,
    `${notes.place(one.start)} and ${notes.place(other.start).toLowerCase()} have the same keys and velocities.${more} Such rows are taken to sound together. If they take turns, give them round robin numbers.`,
  );
}
