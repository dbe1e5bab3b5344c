import { counted } from '../../../model/wording/counted';
import { dynamicIn } from '../../../trade/dynamics';
import type { ColumnMeaning } from '../../../trade/meaning';
import { partsOfFileName } from '../../../trade/names/nameParts';
import type { Statements } from '../../../trade/statements/statements';
import type { ColumnReading } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ZoneList } from '../zoneList';

const velocities: readonly ColumnMeaning[] = ['lovel', 'hivel', 'velocity_range', 'dynamics'];
/** So many of the zones have to name one of the dynamics (our choice). */
const mostNamed = 0.5;

/**
 * Reads the dynamics in the names of samples where the text gives velocities for dynamics and the table has no column that says how loud
 * a zone is played: `Viola_C3_pp.wav` beside `pp is 1 to 40`. Answers whether some were found. The zones of the table are those from
 * number `first` on.
 */
export function readNamedDynamics(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  stated: Statements['dynamics'],
  notes: TableNotes,
): boolean {
  const has = (meaning: ColumnMeaning) =>
    columns.some((column) => column.meaning === meaning || column.side?.kind === meaning);
  if (!stated || velocities.some(has) || hasVelocities(zones, first)) return false;
  const count = zones.count - first;
  const dynamics = Array.from({ length: count }, (_, at) => dynamicOf(zones.sample(first + at), stated));
  const named = dynamics.filter((one) => one >= 0);
  if (named.length < count * mostNamed || new Set(named).size < 2) return false;
  const samples = zones.column('sample').cells;
  let unnamed = -1;
  for (const [at, dynamic] of dynamics.entries()) {
    const cell = samples[first + at];
    if (dynamic >= 0) zones.setDynamic(first + at, cell, dynamic);
    else if (unnamed < 0) unnamed = cell;
  }
  if (unnamed >= 0) {
    const span = { start: zones.cells.starts[unnamed], end: zones.cells.ends[unnamed] };
    const some = counted(count - named.length, 'sample');
    notes.add('assumed', span, `The names of ${some} give no dynamics, so these sound at all velocities.`);
  }
  return true;
}

/** The one of the dynamics with velocities that the name of a sample gives; −1 where it gives none or several. */
function dynamicOf(path: string, { ranges }: NonNullable<Statements['dynamics']>): number {
  const found = partsOfFileName(path)
    .map((part) => ({ part, dynamic: dynamicIn(part) }))
    .filter(({ dynamic }) => ranges.has(dynamic));
  const dynamics = new Set(found.map(({ dynamic }) => dynamic));
  if (dynamics.size === 1) return found[0]?.dynamic ?? -1;
  // A capital alone is rather the name of a note.
  const small = new Set(
    found.filter(({ part }) => part !== part.toUpperCase()).map(({ dynamic }) => dynamic),
  );
  return small.size === 1 ? ([...small][0] ?? -1) : -1;
}

/** Whether some zone has velocities already, as the titles of sections may give them. */
export function hasVelocities(zones: ZoneList, first: number): boolean {
  const columns = [zones.values('lovel'), zones.values('hivel')];
  return columns.some((column) => column?.cells.subarray(first, zones.count).some((cell) => cell >= 0));
}
