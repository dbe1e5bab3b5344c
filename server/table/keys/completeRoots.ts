import { counted } from '../../model/wording/counted';
import { keyBounds } from '../../trade/bounds';
import { conventions, octaveShifts } from '../../trade/middleC';
import { notesInFileName } from '../../trade/readings/keyReading';
import { rootNumbersIn } from '../../trade/statements/keys/numbersInNames';
import type { Statements } from '../../trade/statements/statements';
import type { ColumnReading } from '../columns/columnReading';
import { shortened } from '../columns/columnReading';
import type { SampleEvidence } from '../sampleEvidence';
import type { TableNotes } from '../tableNotes';
import { rootsByNumbers } from '../zones/said/numberedNames';
import type { ZoneList } from '../zones/zoneList';

/** Roots found for zones by one way, and a clause that says how. */
interface FoundRoots {
  of: ReadonlyMap<number, number>;
  how: string;
}

/** Roots are believed where so many of them lie within the key ranges of their zones (our choice). */
const mostWithin = 2 / 3;

/**
 * Gives zones of key ranges their roots where the table has none, with a note: of one key, that key (common practice); else what
 * the sample files carry, their names or their measured pitch tell, where that agrees with the key ranges. Without a root a region sounds
 * as if its sample were recorded at key 60, so what stays open is noted too. The zones of the table are those from number `first` on.
 */
export function completeRoots(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
  { rootKeyOf, pitchOf, keyShift, statements }: SampleEvidence & { keyShift: number; statements: Statements },
): void {
  const lows = zones.values('lokey');
  const highs = zones.values('hikey');
  const isGiven = columns.some(
    ({ meaning, side }) => meaning === 'pitch_keycenter' || meaning === 'key' || side?.kind === 'key',
  );
  if (isGiven || !lows || !highs) return;
  const single: number[] = [];
  const wide: number[] = [];
  for (let zone = first; zone < zones.count; zone++) {
    if (zones.values('pitch_keycenter')?.oneMore(zone) || zones.values('key')?.oneMore(zone)) continue;
    if (lows.cells[zone] < 0 || highs.cells[zone] < 0) continue;
    (lows.numbers[zone] === highs.numbers[zone] ? single : wide).push(zone);
  }
  const [some] = [...wide, ...single];
  if (some === undefined) return;
  const span = cellSpan(zones, lows.cells[some] as number);
  const set = (zone: number, root: number) =>
    zones.column('pitch_keycenter').set(zone, lows.cells[zone], root);
  for (const zone of single) set(zone, lows.numbers[zone] as number);
  notes.row = -2;
  if (wide.length === 0) {
    const message =
      'The table gives no root keys: each zone of one key plays its sample as it was recorded, so that key is its root.';
    notes.add('assumed', span, message);
    return;
  }
  const fits = (zone: number, root: number) =>
    root >= (lows.numbers[zone] as number) && root <= (highs.numbers[zone] as number);
  const said = statements.rootAtEnd;
  const ends = said && zones.column(said.is);
  const found =
    (ends && {
      of: new Map(wide.map((zone) => [zone, ends.numbers[zone] as number])),
      how: `the ${said.is === 'lokey' ? 'low' : 'high'} keys, as "${shortened(said.text)}" says,`,
    }) ??
    inFiles(zones, wide, fits, rootKeyOf, 'the root keys that the sample files carry') ??
    inNames(zones, wide, fits, keyShift) ??
    byNumbers(zones, wide, fits, rootNumbersIn(statements.texts)) ??
    inFiles(
      zones,
      wide,
      fits,
      pitchOf && ((name) => rounded(pitchOf(name))),
      'the pitches measured in the samples',
    );
  for (const [zone, root] of found?.of ?? []) set(zone, root);
  const open = wide.length - (found?.of.size ?? 0);
  if (found) notes.add('assumed', span, `The table gives no root keys: ${found.how} are taken.`);
  if (open === 0) return;
  const which = found ? `For ${counted(open, 'zone')}` : 'The table gives no root keys, and';
  notes.add(
    'assumed',
    span,
    `${which} neither the sample files nor their names give the root key, so such a region sounds as if it was recorded at key 60. Add a column of root keys.`,
  );
}

function inFiles(
  zones: ZoneList,
  wide: readonly number[],
  fits: (zone: number, root: number) => boolean,
  rootOf: ((sample: string) => number | undefined) | undefined,
  how: string,
): FoundRoots | undefined {
  const roots = new Map<number, number>();
  for (const zone of wide) {
    const root = rootOf?.(sampleCellText(zones, zone));
    if (root !== undefined && root >= keyBounds.least && root <= keyBounds.most) roots.set(zone, root);
  }
  return believed(roots, fits) ? { of: roots, how } : undefined;
}

/** Roots by the note names in file names, by the convention of the table where others do not agree better. */
function inNames(
  zones: ZoneList,
  wide: readonly number[],
  fits: (zone: number, root: number) => boolean,
  keyShift: number,
): FoundRoots | undefined {
  const named = new Map(wide.map((zone) => [zone, notesInFileName(sampleCellText(zones, zone))]));
  let best: { roots: Map<number, number>; within: number; name: string } | undefined;
  const own = conventions.filter((one) => octaveShifts[one] === keyShift);
  for (const convention of new Set([...own, ...conventions])) {
    const roots = new Map<number, number>();
    let within = 0;
    for (const [zone, notes] of named) {
      const keys = notes.map((note) => note + octaveShifts[convention]);
      const root = keys.find((key) => fits(zone, key)) ?? keys[0];
      if (root === undefined || root < keyBounds.least || root > keyBounds.most) continue;
      roots.set(zone, root);
      if (fits(zone, root)) within++;
    }
    if (!best || within > best.within) best = { roots, within, name: convention };
  }
  if (!best || !believed(best.roots, fits)) return undefined;
  return { of: best.roots, how: `the notes in the names of the files (${best.name} is key 60)` };
}

/** Roots by the numbers in file names. */
function byNumbers(
  zones: ZoneList,
  wide: readonly number[],
  fits: (zone: number, root: number) => boolean,
  said: string | undefined,
): FoundRoots | undefined {
  const [lows, highs] = [zones.column('lokey'), zones.column('hikey')];
  const names = new Map(wide.map((zone) => [zone, sampleCellText(zones, zone)]));
  const keysOf = (zone: number) => `${lows.numbers[zone]} ${highs.numbers[zone]}`;
  const of = rootsByNumbers(names, keysOf, fits, said !== undefined);
  const why = said === undefined ? '' : `, as "${shortened(said)}" says,`;
  return of && { of, how: `the numbers in the names of the files${why}` };
}

function believed(
  roots: ReadonlyMap<number, number>,
  fits: (zone: number, root: number) => boolean,
): boolean {
  const within = [...roots].filter(([zone, root]) => fits(zone, root)).length;
  return within > 0 && within >= roots.size * mostWithin;
}

function rounded(pitch: number | undefined): number | undefined {
  return pitch === undefined ? undefined : Math.round(pitch);
}

/** The name of a zone's sample as the table has it. */
function sampleCellText(zones: ZoneList, zone: number): string {
  return zones.cells.value(zones.column('sample').cells[zone] as number);
}

function cellSpan({ cells }: ZoneList, cell: number): { start: number; end: number } {
  return { start: cells.starts[cell] ?? 0, end: cells.ends[cell] ?? 0 };
}
